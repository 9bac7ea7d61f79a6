// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/colour_distance.h"

#include <cstdint>
#include <span>
#include <vector>

namespace qw::artwork {

/// A main colour of a picture: the mean of the pixels that are nearest to it.
struct Swatch {
    std::uint8_t red = 0, green = 0, blue = 0;  ///< sRGB
    double share = 0;                           ///< of the pixels that are not white paper, 0 … 1

    Lab lab() const { return lab_of_srgb(red, green, blue); }
};

/// Up to `most` main colours of sRGB pixels, the largest share first, by k-means in CIELAB (Lloyd, IEEE Trans. Inf. Theory 28(2)
/// 1982) over the pixels' colours in bins of 16 levels. It begins with the most frequent bin and then with those that have
/// most pixels far from every beginning, so the same pixels give the same colours. White paper (base/ink_map.h) is left
/// out; a blank picture has none.
std::vector<Swatch> palette_of(std::span<const std::uint8_t> rgb, std::size_t most);

}  // namespace qw::artwork
