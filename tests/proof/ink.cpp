// SPDX-License-Identifier: GPL-3.0-or-later
// Luma weights: ITU-R BT.601.
#include "proof/render.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace qw;
using namespace qw::proof;

namespace {

Pixels filled(std::uint32_t width, std::uint32_t height, std::uint8_t value) {
    return {width, height, std::vector<std::uint8_t>(std::size_t{width} * height * 3, value)};
}

void paint(Pixels& pixels, std::uint32_t x, std::uint32_t y, std::uint8_t r, std::uint8_t g, std::uint8_t b) {
    const std::size_t i = (std::size_t{y} * pixels.width + x) * 3;
    pixels.rgb[i] = r;
    pixels.rgb[i + 1] = g;
    pixels.rgb[i + 2] = b;
}

int darkness(const Pixels& pixels, std::uint32_t x, std::uint32_t y) {
    const std::size_t i = (std::size_t{y} * pixels.width + x) * 3;
    return 255 - (299 * pixels.rgb[i] + 587 * pixels.rgb[i + 1] + 114 * pixels.rgb[i + 2] + 500) / 1000;
}

/// The definition, pixel by pixel.
void check_against_definition(const Pixels& pixels, std::uint32_t cell) {
    const Ink ink = ink_of(pixels, cell);
    REQUIRE(ink.map.columns == (pixels.width + cell - 1) / cell);
    REQUIRE(ink.map.rows == (pixels.height + cell - 1) / cell);
    REQUIRE(ink.map.darkest.size() == std::size_t{ink.map.columns} * ink.map.rows);
    REQUIRE(ink.map.mean.size() == ink.map.darkest.size());
    double sum = 0;
    PixelBox box{pixels.width, pixels.height, 0, 0};
    std::vector<int> darkest(ink.map.darkest.size()), total(darkest.size()), count(darkest.size());
    for (std::uint32_t y = 0; y < pixels.height; ++y)
        for (std::uint32_t x = 0; x < pixels.width; ++x) {
            const int dark = darkness(pixels, x, y);
            const std::size_t i = ink.map.at(x / cell, y / cell);
            sum += dark;
            darkest[i] = std::max(darkest[i], dark);
            total[i] += dark;
            ++count[i];
            if (dark >= ink_threshold)
                box = {std::min(box.left, x), std::min(box.top, y), std::max(box.right, x + 1), std::max(box.bottom, y + 1)};
        }
    CHECK(ink.box == (box.empty() ? PixelBox{} : box));
    CHECK(ink.coverage == Approx(sum / 255 / pixels.width / pixels.height));
    bool same = true;
    for (std::size_t i = 0; i < darkest.size(); ++i)
        same = same && darkest[i] == ink.map.darkest[i] && std::abs(ink.map.mean[i] - 1.0 * total[i] / count[i]) <= 0.5;
    CHECK(same);
}

}  // namespace

TEST_CASE("White has no ink and black is all ink") {
    const Ink white = ink_of(filled(10, 7, 255));
    CHECK(white.box.empty());
    CHECK(white.coverage == 0);
    CHECK(white.map.cell == 4);
    CHECK(white.map.columns == 3);
    CHECK(white.map.rows == 2);
    const Ink black = ink_of(filled(10, 7, 0));
    CHECK(black.box == PixelBox{0, 0, 10, 7});
    CHECK(black.coverage == 1);
    CHECK(black.map.mean.back() == 255);
}

TEST_CASE("Darkness weighs the colours as BT.601 does") {
    const auto dark = [](std::uint8_t r, std::uint8_t g, std::uint8_t b) {
        Pixels one = filled(1, 1, 255);
        paint(one, 0, 0, r, g, b);
        return int{ink_of(one, 1).map.darkest.at(0)};
    };
    CHECK(dark(255, 0, 0) == 179);  // 255 - 76.245
    CHECK(dark(0, 255, 0) == 105);  // 255 - 149.685
    CHECK(dark(0, 0, 255) == 226);  // 255 - 29.07
    CHECK(dark(128, 128, 128) == 127);
}

TEST_CASE("The box holds every pixel from the threshold on") {
    Pixels pixels = filled(40, 30, 255);
    paint(pixels, 7, 9, 247, 247, 247);    // darkness 8
    paint(pixels, 31, 20, 247, 247, 247);
    paint(pixels, 0, 29, 248, 248, 248);   // darkness 7
    CHECK(ink_of(pixels).box == PixelBox{7, 9, 32, 21});
    paint(pixels, 39, 29, 0, 0, 0);
    CHECK(ink_of(pixels).box == PixelBox{7, 9, 40, 30});
}

TEST_CASE("Ink is what its definition says, at every size and cell") {
    std::mt19937 random(601);
    for (const auto& [width, height, cell] : std::vector<std::array<std::uint32_t, 3>>{
             {1, 1, 4}, {3, 2, 4}, {4, 4, 4}, {5, 9, 4}, {64, 48, 4}, {33, 17, 1}, {33, 17, 8}, {33, 17, 100}, {100, 1, 7}}) {
        CAPTURE(width, height, cell);
        Pixels pixels = filled(width, height, 255);
        for (auto& value : pixels.rgb) value = random() % 4 == 0 ? static_cast<std::uint8_t>(random()) : std::uint8_t{255};
        check_against_definition(pixels, cell);
    }
}

TEST_CASE("Nothing has no ink") {
    const Ink ink = ink_of(Pixels{});
    CHECK(ink.box.empty());
    CHECK(ink.map.columns == 0);
    CHECK(ink.map.darkest.empty());
}
