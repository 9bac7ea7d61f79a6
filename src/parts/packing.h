// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/region.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace qw::parts {

/// Where a copy of a shape lies: turned by quarter turns counter-clockwise about the origin, then moved by `by`.
struct Spot {
    int quarter_turns = 0;
    Point by;
    friend bool operator==(const Spot&, const Spot&) = default;
};

struct SheetFill {
    std::vector<Spot> spots;           ///< from the head of the sheet down, left to right
    bool exact = false;                ///< it is proved that no more copies lie on a sheet, among whole quarter turns
};

/// As many copies of `shape` as the search finds on an area of this size (lower left corner at the origin), at least
/// `gap` apart, no more than `wanted`. Empty when not one fits. Same input, same answer.
SheetFill fill_sheet(const Region& shape, Size area, Length gap, std::size_t wanted);

/// How much the shape lacks to fit the area in its best quarter turn, in width and height (0 where it fits), and the
/// largest factor on it that fits.
struct Lack {
    Length width, height;
    double largest_scale = 1;
};
Lack lack_of(const Region& shape, Size area);

}  // namespace qw::parts
