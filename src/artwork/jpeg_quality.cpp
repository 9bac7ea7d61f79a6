// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/jpeg_quality.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

namespace qw::artwork {

namespace {

/// ITU-T T.81 table K.1, row by row.
constexpr int luminance[64] = {16, 11, 10, 16, 24,  40,  51,  61,   //
                               12, 12, 14, 19, 26,  58,  60,  55,   //
                               14, 13, 16, 24, 40,  57,  69,  56,   //
                               14, 17, 22, 29, 51,  87,  80,  62,   //
                               18, 22, 37, 56, 68,  109, 103, 77,   //
                               24, 35, 55, 64, 81,  104, 113, 92,   //
                               49, 64, 78, 87, 103, 121, 120, 101,  //
                               72, 92, 95, 98, 112, 100, 103, 99};

int apart(std::span<const std::uint16_t, 64> table, int quality) {
    const int scale = quality < 50 ? 5000 / quality : 200 - 2 * quality;
    int sum = 0;
    for (std::size_t i = 0; i < 64; ++i) sum += std::abs(table[i] - std::clamp((luminance[i] * scale + 50) / 100, 1, 255));
    return sum;
}

}  // namespace

int jpeg_quality(std::span<const std::uint16_t, 64> table) {
    if (std::find(table.begin(), table.end(), 0) != table.end()) return 0;
    int best = 0, least = std::numeric_limits<int>::max();
    for (int quality = 100; quality >= 1; --quality) {
        const int here = apart(table, quality);
        if (here >= least) continue;
        best = quality;
        least = here;
    }
    return best;
}

}  // namespace qw::artwork
