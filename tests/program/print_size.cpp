// SPDX-License-Identifier: GPL-3.0-or-later
// A printed page is as large as it says: rendered by poppler at 600 dpi, where a pixel is 0.042 mm, and counted.
#include "program/program.h"

#include "base/geometry.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <tuple>

using namespace qw;
using namespace qw::test;

namespace {

constexpr double dpi = 600;

/// One page in grey, from the top.
struct Grey {
    int width = 0, height = 0;
    std::string pixels;
    bool dark(int x, int y) const { return static_cast<unsigned char>(pixels[static_cast<std::size_t>(y) * width + x]) < 128; }
};

Grey rendered(const Path& pdf, int page) {
    const Path folder = Path(QW_RELEASED).parent_path() / "print-size";
    std::filesystem::create_directories(folder);
    const std::string n = std::to_string(page);
    const Said said = run("pdftoppm -r 600 -gray -singlefile -f " + n + " -l " + n + " " + quoted(pdf.string()) + " page", folder);
    REQUIRE(said.status == 0);
    std::istringstream file(read(folder / "page.pgm"));
    std::string kind;
    int most = 0;
    Grey grey;
    file >> kind >> grey.width >> grey.height >> most;
    REQUIRE(kind == "P5");
    file.get();
    grey.pixels.resize(static_cast<std::size_t>(grey.width) * grey.height);
    file.read(grey.pixels.data(), static_cast<std::streamsize>(grey.pixels.size()));
    REQUIRE(file);
    return grey;
}

int pixels(Length length) { return static_cast<int>(std::lround(length.in_inches() * dpi)); }
Length length_of(double pixels) { return Length::inches(pixels / dpi); }

/// Middles of the dark runs down a column of pixels, from the page's top.
std::vector<double> marks_down(const Grey& page, int x) {
    std::vector<double> middles;
    for (int y = 0; y < page.height; ++y) {
        if (!page.dark(x, y)) continue;
        const int from = y;
        while (y < page.height && page.dark(x, y)) ++y;
        middles.push_back((from + y) / 2.0);
    }
    return middles;
}

bool any_apart(const std::vector<double>& marks, Length wanted) {
    for (std::size_t i = 0; i < marks.size(); ++i)
        for (std::size_t j = i + 1; j < marks.size(); ++j)
            if (abs(length_of(marks[j] - marks[i]) - wanted) <= Length::mm(0.1)) return true;
    return false;
}

}  // namespace

TEST_CASE("the gauge of the print check measures what it says, to 0.1 mm", "[print-size]") {
    for (const auto& [paper, size, gauge] : {std::tuple("a4", Size{Length::mm(210), Length::mm(297)}, Length::mm(200)),
                                             std::tuple("letter", Size{Length::inches(8.5), Length::inches(11)}, Length::inches(8))}) {
        const Grey page = rendered(release_of("tidewater-almanac") / paper / "print-check.pdf", 1);
        CHECK(abs(length_of(page.width) - size.width) < Length::mm(0.1));
        CHECK(abs(length_of(page.height) - size.height) < Length::mm(0.1));
        // Its end marks reach 3 mm to either side of the line, which stands 27 mm from the right edge.
        const int beside_it = pixels(size.width - Length::mm(27 + 1.5));
        INFO(paper);
        CHECK(any_apart(marks_down(page, beside_it), gauge));
        CHECK_FALSE(any_apart(marks_down(page, beside_it), gauge + Length::mm(0.3)));
    }
}
