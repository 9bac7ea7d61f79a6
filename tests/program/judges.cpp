// SPDX-License-Identifier: GPL-3.0-or-later
// Every PDF of the demo kits before outside judges: qpdf for its structure, poppler, Ghostscript and mutool for what it
// looks like.
#include "program/program.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>

using namespace qw;
using namespace qw::test;

namespace {

struct Picture {
    int width = 0, height = 0;
    std::string rgb;
};

/// Binary PPM, 8 bits.
Picture read_ppm(const Path& path) {
    const std::string text = read(path);
    Picture picture;
    int depth = 0, used = 0;
    REQUIRE(std::sscanf(text.c_str(), "P6%*[ \n]%n", &used) == 0);
    std::size_t at = 2;
    const auto number = [&] {
        for (;;) {
            while (std::isspace(static_cast<unsigned char>(text[at]))) ++at;
            if (text[at] != '#') break;
            at = text.find('\n', at);
        }
        const std::size_t begin = at;
        while (std::isdigit(static_cast<unsigned char>(text[at]))) ++at;
        return std::stoi(text.substr(begin, at - begin));
    };
    picture.width = number();
    picture.height = number();
    depth = number();
    REQUIRE(depth == 255);
    picture.rgb = text.substr(at + 1);
    REQUIRE(picture.rgb.size() == std::size_t(picture.width) * std::size_t(picture.height) * 3);
    return picture;
}

double mean_difference(const Picture& a, const Picture& b) {
    // Renderers round a page's last fraction of a pixel up or down.
    REQUIRE(std::abs(a.width - b.width) <= 1);
    REQUIRE(std::abs(a.height - b.height) <= 1);
    const int width = std::min(a.width, b.width), height = std::min(a.height, b.height);
    double sum = 0;
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width * 3; ++x)
            sum += std::abs(int(static_cast<unsigned char>(a.rgb[std::size_t(y) * std::size_t(a.width) * 3 + std::size_t(x)])) -
                            int(static_cast<unsigned char>(b.rgb[std::size_t(y) * std::size_t(b.width) * 3 + std::size_t(x)])));
    return sum / (double(width) * height * 3);
}

/// Each pixel the mean of `factor` × `factor`.
Picture averaged(const Picture& large, int factor) {
    Picture small{large.width / factor, large.height / factor, {}};
    small.rgb.resize(std::size_t(small.width) * std::size_t(small.height) * 3);
    for (int y = 0; y < small.height; ++y) {
        for (int x = 0; x < small.width * 3; ++x) {
            int sum = 0;
            for (int dy = 0; dy < factor; ++dy)
                for (int dx = 0; dx < factor; ++dx)
                    sum += static_cast<unsigned char>(
                        large.rgb[(std::size_t(y * factor + dy) * std::size_t(large.width) + std::size_t(x / 3 * factor + dx)) * 3 +
                                  std::size_t(x % 3)]);
            small.rgb[std::size_t(y) * std::size_t(small.width) * 3 + std::size_t(x)] = static_cast<char>(sum / (factor * factor));
        }
    }
    return small;
}

/// Pages are compared at 100 dpi. Artwork has 300 pixels an inch; of these poppler and mutool show means and Ghostscript
/// shows single ones, which on fine drawing is three to five levels apart on the mean. The generated sheets are full of lines of 0.3 to 1 pt, which at 100 dpi are thinner
/// than a pixel: poppler then draws a whole black pixel, Ghostscript and mutool a grey one, each with its own rule. Both
/// are therefore rendered finer, 3 times for artwork and 4 for sheets, and averaged, which shows whether the ink itself
/// is the same.
void judge(const Path& pdf, int page, int factor) {
    TestFolder folder;
    const std::string file = quoted(pdf.string()), number = std::to_string(page), dpi = std::to_string(100 * factor);
    REQUIRE(run("pdftoppm -r " + dpi + " -f " + number + " -l " + number + " -singlefile " + file + " poppler", folder.path()).status == 0);
    REQUIRE(run("gs -q -dSAFER -dBATCH -dNOPAUSE -dTextAlphaBits=4 -dGraphicsAlphaBits=4 -r" + dpi + " -sDEVICE=ppmraw -dFirstPage=" + number +
                    " -dLastPage=" + number + " -sOutputFile=gs.ppm " + file,
                folder.path())
                .status == 0);
    REQUIRE(run("mutool draw -q -r " + dpi + " -o mutool.ppm " + file + " " + number, folder.path()).status == 0);
    const Picture poppler = averaged(read_ppm(folder / "poppler.ppm"), factor), gs = averaged(read_ppm(folder / "gs.ppm"), factor),
                  mutool = averaged(read_ppm(folder / "mutool.ppm"), factor);
    INFO(pdf << " page " << page);
    // The list of materials is the fullest page of small type; its letters alone are 3.2 levels apart.
    CHECK(mean_difference(poppler, gs) <= 3.5);
    CHECK(mean_difference(poppler, mutool) <= 3.5);
    CHECK(mean_difference(gs, mutool) <= 3.5);
}

}  // namespace

TEST_CASE("qpdf finds nothing to say of any PDF", "[judges]") {
    for (const std::string& kit : demo_kits) {
        for (const Path& pdf : files_below(release_of(kit), ".pdf")) {
            const Said said = run("qpdf --check " + quoted(pdf.string()), "/");
            INFO(said.text);
            CHECK(said.status == 0);
            CHECK(said.text.find("WARNING") == std::string::npos);
        }
    }
}

TEST_CASE("all fonts are embedded and subset, and every page says which box is what", "[judges]") {
    for (const std::string& kit : demo_kits) {
        for (const Path& pdf : files_below(release_of(kit), ".pdf")) {
            INFO(pdf);
            const Said fonts = run("pdffonts " + quoted(pdf.string()) + " | tail -n +3 | awk '{print $(NF-4), $(NF-3)}' | sort -u", "/");
            CHECK((fonts.text.empty() || fonts.text == "yes yes\n"));
            const Said boxes = run("pdfinfo -box -l 99 " + quoted(pdf.string()) + " | grep -c -E 'MediaBox|TrimBox|BleedBox'", "/");
            CHECK(std::stoi(boxes.text) % 3 == 0);
            // ISO 216 and the PWG name na_letter_8.5x11in, in points.
            const Said media = run("pdfinfo -box " + quoted(pdf.string()) + " | awk '/MediaBox/{print $(NF-1), $NF}'", "/");
            double width = 0, height = 0;
            REQUIRE(std::sscanf(media.text.c_str(), "%lf %lf", &width, &height) == 2);
            const bool a4 = pdf.string().find("/a4/") != std::string::npos;
            CHECK(std::min(width, height) == Approx(a4 ? 595.28 : 612).margin(0.01));
            CHECK(std::max(width, height) == Approx(a4 ? 841.89 : 792).margin(0.01));
        }
    }
}

TEST_CASE("poppler, Ghostscript and mutool show every PDF alike", "[judges]") {
    for (const std::string& kit : demo_kits) {
        for (const char* edition : {"letter/borderless", "a4/bordered"})
            for (const Path& pdf : files_below(release_of(kit) / edition, ".pdf")) judge(pdf, 1, 3);
    }
    for (const int page : {2, 5, 8}) judge(release_of("lamplight-mini") / "a4/bordered/journal-pages.pdf", page, 3);
    for (const char* sheet : {"measurements", "materials", "print-check"}) {
        judge(release_of("tidewater-almanac") / "letter" / (std::string(sheet) + ".pdf"), 1, 4);
        judge(release_of("lamplight-mini") / "a4" / (std::string(sheet) + ".pdf"), 1, 4);
    }
}
