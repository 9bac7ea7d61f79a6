// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/darkness.h"
#include "artwork/ink_rows.h"
#include "artwork/judge.h"
#include "artwork/samples.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;

TEST_CASE("darkness is the formula of the ink map for every colour", "[artwork][ink]") {
    std::vector<std::uint8_t> rgb(256 * 3 + row_slack), dark(256 + row_slack);
    std::size_t wrong = 0;
    for (int r = 0; r < 256; ++r)
        for (int g = 0; g < 256; ++g) {
            for (std::size_t b = 0; b < 256; ++b) {
                rgb[3 * b] = static_cast<std::uint8_t>(r);
                rgb[3 * b + 1] = static_cast<std::uint8_t>(g);
                rgb[3 * b + 2] = static_cast<std::uint8_t>(b);
            }
            darkness_of_rgb(rgb.data(), dark.data(), 256);
            for (int b = 0; b < 256; ++b) wrong += dark[static_cast<std::size_t>(b)] != 255 - (299 * r + 587 * g + 114 * b + 500) / 1000;
        }
    CHECK(wrong == 0);
}

TEST_CASE("laying on white and narrowing round to nearest", "[artwork][png]") {
    std::size_t wrong = 0;
    for (int sample = 0; sample < 256; ++sample)
        for (int alpha = 0; alpha < 256; ++alpha)
            wrong += on_white(static_cast<std::uint8_t>(sample), static_cast<std::uint8_t>(alpha)) != std::lround((sample * alpha + 255.0 * (255 - alpha)) / 255);
    CHECK(wrong == 0);
    for (int value = 0; value < 65536; ++value) {
        const auto wide = static_cast<std::uint16_t>(value);
        std::uint8_t narrowed = 0;
        narrow(&wide, &narrowed, 1);
        wrong += narrowed != std::lround(value / 257.0);
    }
    CHECK(wrong == 0);
}

TEST_CASE("ink of grey, RGB and indexed rows, in every turn and at odd sizes", "[artwork][ink]") {
    for (const auto& [width, height] : {std::pair{1u, 1u}, {17u, 5u}, {451u, 13u}, {13u, 907u}, {1803u, 701u}})
        for (int orientation = 1; orientation <= 8; ++orientation)
            for (const int kind : {1, 3, 0}) {
                CAPTURE(width, height, orientation, kind);
                Form form{width, height, kind == 3 ? 3 : 1, orientation, {}};
                if (kind == 0)
                    for (std::uint32_t i = 0; i < 768; ++i) form.palette.push_back(static_cast<std::uint8_t>(255 - i * i % 200));
                InkRows rows;
                rows.begin(form);
                Pixels pixels{width, height, {}};
                std::vector<std::uint8_t> row(std::size_t{width} * 3 + row_slack);
                for (std::uint32_t y = 0; y < height; ++y) {
                    for (std::uint32_t i = 0; i < width * static_cast<unsigned>(form.components); ++i) {
                        const bool paper = i < width / 9 || y > height * 3 / 4;
                        row[i] = kind == 0 ? static_cast<std::uint8_t>(i + y) : paper ? std::uint8_t{250} : static_cast<std::uint8_t>(i * 7 + y * y);
                    }
                    rows.row(row.data());
                    for (std::uint32_t x = 0; x < width; ++x)
                        for (std::uint32_t c = 0; c < 3; ++c)
                            pixels.rgb.push_back(kind == 3 ? row[3 * x + c] : kind == 1 ? row[x] : form.palette[std::size_t{row[x]} * 3 + c]);
                }
                require_same(rows.ink(), plain_ink(upright(pixels, orientation), cell_for(width, height)));
            }
}

TEST_CASE("cells of more than 256 rows add up", "[artwork][ink]") {
    InkRows rows;
    const Form form{3, 300'000, 1, 1, {}};
    rows.begin(form);
    std::vector<std::uint8_t> row(3 + row_slack, 0);  // black
    for (std::uint32_t y = 0; y < form.height; ++y) rows.row(row.data());
    const Ink ink = rows.ink();
    CHECK(ink.map.cell == 2048);
    CHECK(ink.coverage == 1);
    CHECK(ink.map.mean == std::vector<std::uint8_t>(ink.map.rows, 255));
    CHECK(ink.box == PixelBox{0, 0, 3, 300'000});
}
