// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "proof/render.h"
#include "proof/written_pdf.h"
#include "support/shell.h"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <thread>
#include <unistd.h>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

using Colour = std::array<int, 3>;
constexpr Colour white{255, 255, 255}, black{0, 0, 0}, red{255, 0, 0};

Colour at(const Pixels& pixels, std::uint32_t x, std::uint32_t y) {
    const std::size_t i = (std::size_t{y} * pixels.width + x) * 3;
    return {pixels.rgb.at(i), pixels.rgb.at(i + 1), pixels.rgb.at(i + 2)};
}

class Opened {
public:
    explicit Opened(const std::string& bytes) : path(folder / "a.pdf") {
        put(path, bytes);
        renderer = std::make_unique<Renderer>(path);
    }
    test::TestFolder folder;
    Path path;
    std::unique_ptr<Renderer> renderer;
};

const std::string helvetica = "/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>";
/// A black square in the lower left corner, a red one beside it.
const std::string squares = "0 g 0 0 50 50 re f 1 0 0 rg 50 0 50 50 re f";

}  // namespace

TEST_CASE("A page is drawn on white, rows from the top, at any density") {
    Opened file(one_page(squares));
    CHECK(file.renderer->damage() == "");
    CHECK(file.renderer->pages() == 1);
    for (const double dpi : {36.0, 72.0, 144.0, 150.0}) {
        CAPTURE(dpi);
        const Pixels pixels = file.renderer->page(1, dpi);
        const double scale = dpi / 72;
        const auto px = [&](double points) { return static_cast<std::uint32_t>(points * scale); };
        CHECK(std::abs(pixels.width - 200 * scale) <= 1);
        CHECK(std::abs(pixels.height - 100 * scale) <= 1);
        REQUIRE(pixels.rgb.size() == std::size_t{pixels.width} * pixels.height * 3);
        CHECK(at(pixels, px(25), px(75)) == black);
        CHECK(at(pixels, px(75), px(75)) == red);
        CHECK(at(pixels, px(25), px(25)) == white);
        CHECK(at(pixels, pixels.width - 1, 0) == white);
        CHECK(at(pixels, pixels.width - 1, pixels.height - 1) == white);
    }
}

TEST_CASE("An odd width has no padding") {
    Opened file(one_page("0 g 0 0 7 1 re f", "", "/MediaBox [0 0 7 3]"));
    const Pixels pixels = file.renderer->page(1, 72);
    REQUIRE(pixels.width == 7);
    REQUIRE(pixels.rgb.size() == 7 * 3 * 3);
    CHECK(at(pixels, 6, 1) == white);
    CHECK(at(pixels, 0, 2) == black);
    CHECK(at(pixels, 6, 2) == black);
}

TEST_CASE("The crop box is shown, turned by Rotate") {
    Opened file(one_page(squares, "", "/MediaBox [0 0 200 100] /CropBox [0 0 100 80] /Rotate 90"));
    const Size size = file.renderer->shown_size(1);
    CHECK(size == Size{Length::points(80), Length::points(100)});
    const Pixels pixels = file.renderer->page(1, 72);
    CHECK(pixels.width == 80);
    CHECK(pixels.height == 100);
    CHECK(at(pixels, 25, 25) == black);  // turned clockwise, the lower left corner is the upper left one
    CHECK(at(pixels, 25, 75) == red);
    CHECK(at(pixels, 75, 25) == white);
    for (const std::string turn : {"0", "180", "270", "-90"}) {
        CAPTURE(turn);
        Opened other(one_page(squares, "", "/MediaBox [0 0 200 100] /Rotate " + turn));
        const Pixels drawn = other.renderer->page(1, 72);
        const Size shown = other.renderer->shown_size(1);
        CHECK(shown.width == Length::points(drawn.width));
        CHECK(shown.height == Length::points(drawn.height));
        CHECK(drawn.width == (turn == "0" || turn == "180" ? 200u : 100u));
    }
}

TEST_CASE("A blank page is white to the last pixel") {
    Opened file(one_page(""));
    const Pixels pixels = file.renderer->page(1, 96);
    CHECK(std::all_of(pixels.rgb.begin(), pixels.rgb.end(), [](std::uint8_t v) { return v == 255; }));
}

TEST_CASE("Edges are smoothed") {
    Opened file(one_page("0 g 0 0 m 100 0 l 0 100 l f"));
    const Colour edge = at(file.renderer->page(1, 72), 50, 50);  // the slope halves this pixel
    CHECK(edge[0] > 60);
    CHECK(edge[0] < 200);
}

TEST_CASE("A page that is not there, and one too large to draw, are faults") {
    Opened file(one_page(squares));
    Renderer& renderer = *file.renderer;
    CHECK_THROWS_AS(renderer.page(0, 72), Fault);
    CHECK_THROWS_AS(renderer.page(2, 72), Fault);
    CHECK_THROWS_AS(renderer.shown_size(2), Fault);
    CHECK_THROWS_AS(renderer.text(-1), Fault);
    CHECK_THROWS_AS(renderer.page(1, 0), Fault);
    CHECK_THROWS_AS(renderer.page(1, -72), Fault);
    CHECK_THROWS_AS(renderer.page(1, std::nan("")), Fault);
    CHECK_THROWS_AS(renderer.page(1, 72 * 150), Fault);  // 30 000 x 15 000 pixels
}

TEST_CASE("What cannot be opened is told") {
    Opened text("no PDF at all");
    CHECK(text.renderer->pages() == 0);
    CHECK(text.renderer->damage() != "");
    CHECK_THROWS_AS(text.renderer->page(1, 72), Fault);
    Opened shut(one_page(squares));
    REQUIRE(test::run("qpdf --encrypt user owner 256 -- a.pdf shut.pdf", shut.folder.path()).status == 0);
    Renderer locked(shut.folder / "shut.pdf");
    CHECK(locked.pages() == 0);
    CHECK_THAT(locked.damage(), Catch::Contains("password"));
    Renderer missing(shut.folder / "none.pdf");
    CHECK(missing.damage() != "");
}

TEST_CASE("poppler is silent on the terminal") {
    test::TestFolder folder;
    put(folder / "bad.pdf", "%PDF-1.4\nnothing");
    const int kept = ::dup(2);
    FILE* file = std::fopen((folder / "said").c_str(), "w+");
    REQUIRE(file);
    ::dup2(::fileno(file), 2);
    Renderer(folder / "bad.pdf");
    std::fflush(stderr);
    ::dup2(kept, 2);
    ::close(kept);
    std::fclose(file);
    CHECK(std::filesystem::file_size(folder / "said") == 0);
}

TEST_CASE("Two threads with a renderer each see the same") {
    Opened file(one_page(squares + " BT /F 20 Tf 20 60 Td (Tide) Tj ET", helvetica));
    const Pixels alone = file.renderer->page(1, 200);
    std::array<Pixels, 2> seen;
    std::array<std::thread, 2> threads;
    for (std::size_t i = 0; i < 2; ++i)
        threads[i] = std::thread([&, i] {
            for (int round = 0; round < 5; ++round) seen[i] = Renderer(file.path).page(1, 200);
        });
    for (auto& thread : threads) thread.join();
    CHECK(seen[0].rgb == alone.rgb);
    CHECK(seen[1].rgb == alone.rgb);
}

TEST_CASE("Text comes in reading order, a fraction on its line") {
    // How a sheet sets 5 5/8: a raised, smaller numerator, a slash, a smaller denominator; label and both systems in
    // one row, though the content stream has the columns one after the other.
    Opened file(one_page("BT /F 12 Tf 20 60 Td (Board) Tj 0 -30 Td (Spine) Tj ET "
                         "BT /F 12 Tf 80 60 Td (5 ) Tj /F 7 Tf 4 Ts (5) Tj /F 12 Tf 0 Ts (/) Tj /F 7 Tf (8) Tj /F 12 Tf ( in) Tj ET "
                         "BT /F 12 Tf 80 30 Td (1/4 in) Tj ET "
                         "BT /F 12 Tf 140 60 Td (14.3 cm) Tj 0 -30 Td (6 mm) Tj ET",
                         helvetica));
    const std::string text = file.renderer->text(1);
    INFO(text);
    CHECK_THAT(text, Catch::Contains("5 5/8 in"));
    const auto board = text.find("Board"), first = text.find("14.3 cm"), spine = text.find("Spine"), last = text.find("6 mm");
    REQUIRE(last != std::string::npos);
    CHECK(board < first);
    CHECK(first < spine);
    CHECK(spine < last);
    CHECK(text.substr(board, first - board).find('\n') == std::string::npos);
}

TEST_CASE("Text comes in UTF-8") {
    Opened file(one_page("BT /F 12 Tf 20 60 Td (\\251 3 \\327 4 \\274 caf\\351) Tj ET",
                         "/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >> >>"));
    CHECK_THAT(file.renderer->text(1), Catch::Contains("\u00a9 3 \u00d7 4 \u00bc caf\u00e9"));
}
