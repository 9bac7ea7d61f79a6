// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/unfilter.h"

#include "artwork/rows.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <vector>

using namespace qw::artwork;

namespace {

/// PNG specification, 9.4.
int paeth(int a, int b, int c) {
    const int p = a + b - c, pa = std::abs(p - a), pb = std::abs(p - b), pc = std::abs(p - c);
    if (pa <= pb && pa <= pc) return a;
    return pb <= pc ? b : c;
}

std::vector<std::uint8_t> padded(std::size_t bytes, unsigned seed) {
    std::vector<std::uint8_t> row(bytes + row_slack);
    for (auto& byte : row) byte = static_cast<std::uint8_t>((seed = seed * 1664525 + 1013904223) >> 24);
    return row;
}

}  // namespace

TEST_CASE("the Paeth predictor is that of the specification for all three neighbours", "[artwork][png]") {
    // Pairs of pixels: the first sets c above and a on the left, the second is predicted from a, b and c.
    std::vector<std::uint8_t> above(512 + row_slack), filtered(512 + row_slack), row(512 + row_slack);
    std::size_t wrong = 0;
    for (int a = 0; a < 256; ++a) {
        for (int c = 0; c < 256; ++c) {
            for (std::size_t b = 0; b < 256; ++b) {
                above[2 * b] = static_cast<std::uint8_t>(c);
                above[2 * b + 1] = static_cast<std::uint8_t>(b);
            }
            // What precedes a pair is the previous pair's result; the filtered byte makes it `a` all the same.
            int left = 0, corner = 0;
            for (std::size_t b = 0; b < 256; ++b) {
                filtered[2 * b] = static_cast<std::uint8_t>(a - paeth(left, c, corner));
                filtered[2 * b + 1] = 0;
                left = paeth(a, static_cast<int>(b), c);
                corner = static_cast<int>(b);
            }
            unfilter(4, filtered.data(), above.data(), row.data(), 512, 1);
            for (std::size_t b = 0; b < 256; ++b) wrong += row[2 * b] != a || row[2 * b + 1] != paeth(a, static_cast<int>(b), c);
        }
    }
    CHECK(wrong == 0);
}

TEST_CASE("filters are undone at every width and distance", "[artwork][png]") {
    for (const int step : {1, 2, 3, 4, 6, 8})
        for (std::size_t pixels = 1; pixels <= 40; ++pixels)
            for (std::uint8_t type = 0; type <= 4; ++type) {
                const std::size_t bytes = pixels * static_cast<std::size_t>(step), back = static_cast<std::size_t>(step);
                const auto filtered = padded(bytes, type * 7u + static_cast<unsigned>(pixels)), above = padded(bytes, 99u + static_cast<unsigned>(step));
                auto row = padded(bytes, 5);
                REQUIRE(unfilter(type, filtered.data(), above.data(), row.data(), bytes, step));
                std::vector<std::uint8_t> expected(bytes);
                for (std::size_t i = 0; i < bytes; ++i) {
                    const int a = i < back ? 0 : expected[i - back], b = above[i], c = i < back ? 0 : above[i - back];
                    const int predicted[5] = {0, a, b, (a + b) / 2, paeth(a, b, c)};
                    expected[i] = static_cast<std::uint8_t>(filtered[i] + predicted[type]);
                }
                row.resize(bytes);
                CAPTURE(step, pixels, int(type));
                CHECK(row == expected);
            }
    std::vector<std::uint8_t> row(1 + row_slack);
    CHECK_FALSE(unfilter(5, row.data(), row.data(), row.data(), 1, 1));
}
