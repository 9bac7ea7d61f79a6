// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/draw.h"

#include "base/digest.h"
#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <sstream>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

const Rect upright = Rect::at({20_mm, 30_mm}, {150_mm, 100_mm});

/// A document with one picture, drawn as a.pdf in the folder.
Path drawn(Disk& disk, const TestFolder& folder, const Path& picture) {
    compose::Document document = one_a4_page();
    place_picture(disk, document, 0, picture, upright);
    pdf::draw(disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    return folder / "a.pdf";
}

/// The pixels that poppler's own decoder takes out of the PDF.
Pixels taken_out(const Path& pdf, const TestFolder& folder) {
    must_run("pdfimages " + quoted(pdf) + " " + quoted(folder / "out"));
    return read_ppm(folder / (std::filesystem::exists(folder / "out-000.pbm") ? "out-000.pbm" : "out-000.ppm"));
}

/// What the rows of a plan look like as 8-bit RGB.
std::uint8_t expected(const PngPlan& plan, std::uint32_t x, std::uint32_t y, std::size_t c) {
    const std::string& row = plan.rows[y];
    const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(row[i]); };
    if (plan.colour_type == 2) return byte(3 * x + c);
    if (plan.bits == 16) return byte(2 * x);
    const std::size_t bits = static_cast<std::size_t>(plan.bits);
    const unsigned sample = byte(x * bits / 8) >> (8 - bits - x * bits % 8) & ((1u << bits) - 1);
    if (plan.colour_type == 3) return static_cast<std::uint8_t>(plan.palette[3 * sample + c]);
    return static_cast<std::uint8_t>(sample * 255 / ((1u << bits) - 1));
}

PngPlan plain(int colour_type, int bits) {
    PngPlan plan{90, 60, bits, colour_type, "", {}};
    if (colour_type == 3)
        for (int i = 0; i < 1 << bits; ++i) plan.palette += {static_cast<char>(i * 255 / ((1 << bits) - 1)), static_cast<char>(200 - i * 20), static_cast<char>(i)};
    for (std::uint32_t y = 0; y < plan.height; ++y) {
        std::string row;
        for (std::uint32_t i = 0; i < (plan.width * static_cast<std::uint32_t>(bits) + 7) / 8; ++i) row += static_cast<char>(i * 7 + y * 13);
        plan.rows.push_back(row);
    }
    return plan;
}

void check_pixels(const Pixels& pixels, const PngPlan& plan, int tolerance) {
    REQUIRE(pixels.width == plan.width);
    REQUIRE(pixels.height == plan.height);
    int worst = 0;
    for (std::uint32_t y = 0; y < plan.height; ++y)
        for (std::uint32_t x = 0; x < plan.width; ++x)
            for (std::size_t c = 0; c < 3; ++c) worst = std::max(worst, std::abs(pixels.at(x, y)[c] - expected(plan, x, y, c)));
    CHECK(worst <= tolerance);
}

/// Draws the plan on letter paper so that each of its pixels covers six by six whole pixels at 100 dpi, and takes
/// the middle of each out of a rendered page.
constexpr std::uint32_t blow_up = 6;

Path drawn_for_sampling(Disk& disk, const TestFolder& folder, const PngPlan& plan) {
    write_text(folder / "a.png", png(plan));
    compose::Document document = one_page({8.5_in, 11_in});
    const Size size{Length::inches(plan.width * blow_up / 100.0), Length::inches(plan.height * blow_up / 100.0)};
    place_picture(disk, document, 0, folder / "a.png", Rect::at({0.5_in, 11_in - 1_in - size.height}, size));
    pdf::draw(disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    return folder / "a.pdf";
}

Pixels sampled(const Pixels& page, const PngPlan& plan) {
    Pixels pixels{plan.width, plan.height, {}};
    for (std::uint32_t y = 0; y < plan.height; ++y)
        for (std::uint32_t x = 0; x < plan.width; ++x) {
            const std::uint8_t* p = page.at(50 + x * blow_up + blow_up / 2, 100 + y * blow_up + blow_up / 2);
            pixels.rgb.insert(pixels.rgb.end(), p, p + 3);
        }
    return pixels;
}

int count_of(const std::string& text, const std::string& part) {
    int count = 0;
    for (std::size_t at = text.find(part); at != text.npos; at = text.find(part, at + part.size())) ++count;
    return count;
}

}  // namespace

TEST_CASE("PNG data go through to the same pixels, whatever their kind", "[many]") {
    const auto disk = real_disk();
    for (const PngPlan& plan : {colourful(120, 80), plain(0, 8), plain(0, 4), plain(0, 1), plain(0, 16), plain(3, 8), plain(3, 2), plain(3, 1)}) {
        INFO("colour type " << plan.colour_type << ", " << plan.bits << " bits");
        const TestFolder folder;
        const Path pdf = drawn_for_sampling(*disk, folder, plan);
        const int tolerance = plan.bits == 16 ? 1 : 0;  // viewers round 16 bits to 8, or cut them
        for (const Pixels& page : rendered(pdf, 1, 100, folder.path())) check_pixels(sampled(page, plan), plan, tolerance);
        // pdfimages gives indexes instead of colours for a palette of two.
        if (plan.colour_type != 3 || plan.bits > 1) check_pixels(taken_out(pdf, folder), plan, tolerance);
    }
}

TEST_CASE("a PNG's own bytes are the stream of the PDF") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.png", png(colourful(300, 200)));
    const artwork::Facts facts = artwork::look(*disk, folder / "a.png");
    const Path pdf = drawn(*disk, folder, folder / "a.png");
    const std::string list = must_run("pdfimages -list " + quoted(pdf));
    const std::string last = list.substr(list.find("image "));
    std::istringstream words(last);
    std::string word;
    for (int i = 0; i < 9; ++i) words >> word;  // image, width, height, color, comp, bpc, enc, interp, object
    must_run("qpdf --raw-stream-data --show-object=" + word + " " + quoted(pdf) + " >" + quoted(folder / "stream"));
    const std::string whole = file_text(folder / "a.png");
    std::string payload;
    for (const artwork::Extent& part : facts.payload) payload += whole.substr(part.offset, part.length);
    REQUIRE(payload.size() > 1000);
    CHECK((file_text(folder / "stream") == payload));
    CHECK(sha256_of(payload) == facts.payload_sha256);
}

TEST_CASE("a JPEG comes out of the PDF as the file it was") {
    const auto disk = real_disk();
    for (const char* device : {"jpeg", "jpeggray"}) {
        const TestFolder folder;
        make_jpeg(folder / "a.jpg", device, 200, 140);
        const Path pdf = drawn(*disk, folder, folder / "a.jpg");
        must_run("pdfimages -all " + quoted(pdf) + " " + quoted(folder / "out"));
        CHECK((file_text(folder / "out-000.jpg") == file_text(folder / "a.jpg")));
        check_alike(pdf, 1, folder.path());
    }
}

TEST_CASE("a CMYK JPEG keeps its colours") {
    const auto disk = real_disk();
    const TestFolder folder;
    make_jpeg(folder / "a.jpg", "jpegcmyk", 200, 140);
    const Path pdf = drawn(*disk, folder, folder / "a.jpg");
    const std::vector<Pixels> all = rendered(pdf, 1, 100, folder.path());
    for (const Pixels& pixels : all) {
        // The lower left shape is red, the white between the shapes is white: an inverted picture would be cyan and black.
        const auto at = [&](Point p) {
            return pixels.at(static_cast<std::uint32_t>(p.x.in_inches() * 100), static_cast<std::uint32_t>((297_mm - p.y).in_inches() * 100));
        };
        const std::uint8_t* red = at({upright.left + 20_mm, upright.bottom + 20_mm});
        CHECK(red[0] > 150);
        CHECK(red[1] < 110);
        CHECK(red[2] < 110);
        const std::uint8_t* white = at({upright.left + 10_mm, upright.top - 10_mm});
        for (int c = 0; c < 3; ++c) CHECK(white[c] > 245);
    }
}

TEST_CASE("a picture lies where the plan puts it and nowhere else") {
    const auto disk = real_disk();
    const TestFolder folder;
    PngPlan black{40, 30, 8, 0, "", std::vector<std::string>(30, std::string(40, '\0'))};
    write_text(folder / "a.png", png(black));
    compose::Document document = one_a4_page();
    place_picture(*disk, document, 0, folder / "a.png", upright);
    // Turned by a quarter and cut off by a clip on another page.
    document.pages.push_back(document.pages[0]);
    auto& turned = std::get<compose::Picture>(document.pages[1].items[0]);
    turned.place = {0, 144, -288, 0, 360, 72};  // a quarter turn: the unit square covers x 72…360, y 72…216
    turned.clip = Rect{Length::points(144), {}, 210_mm, Length::points(144)};
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    for (const Pixels& pixels : rendered(folder / "a.pdf", 1, 72, folder.path())) {
        const PixelBox box = dark_box(pixels);
        CHECK(box.left == Approx(upright.left.in_points()).margin(1));
        CHECK(box.right == Approx(upright.right.in_points()).margin(1));
        CHECK(box.top == Approx((297_mm - upright.top).in_points()).margin(1));
        CHECK(box.bottom == Approx((297_mm - upright.bottom).in_points()).margin(1));
    }
    for (const Pixels& pixels : rendered(folder / "a.pdf", 2, 72, folder.path())) {
        const PixelBox box = dark_box(pixels);
        const double height = (297_mm).in_points();
        CHECK(box.left == Approx(144).margin(1));
        CHECK(box.right == Approx(360).margin(1));
        CHECK(box.top == Approx(height - 144).margin(1.5));
        CHECK(box.bottom == Approx(height - 72).margin(1.5));
    }
}

TEST_CASE("a picture that many pages show is written once") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.png", png(colourful(200, 100)));
    compose::Document document = one_a4_page();
    place_picture(*disk, document, 0, folder / "a.png", upright);
    document.pages[0].items.push_back(document.pages[0].items[0]);
    for (int i = 0; i < 5; ++i) document.pages.push_back(document.pages[0]);
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    CHECK(count_of(file_text(folder / "a.pdf"), "/Subtype/Image") == 1);
    CHECK(count_of(must_run("pdfimages -list " + quoted(folder / "a.pdf")), "image") >= 6);
}

TEST_CASE("artwork that changed after it was looked at is a fault and leaves no file") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.png", png(colourful(200, 100)));
    compose::Document document = one_a4_page();
    place_picture(*disk, document, 0, folder / "a.png", upright);
    write_text(folder / "a.png", png(colourful(100, 100)));
    CHECK_THROWS_AS(pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts()), Fault);
    CHECK_FALSE(disk->stat(folder / "a.pdf"));
}
