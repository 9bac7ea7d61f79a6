// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace qw::parts::packing {

struct Box {
    bool turned = false;               ///< its width stands upright
    Point at;                          ///< lower left corner
};

/// Equal rectangles on a rectangle, whole or by a quarter turn, without gaps: as many as five blocks in a pinwheel hold,
/// each filled in the same way (recursive five-block heuristic; Morabito and Morales, A simple and effective recursive
/// procedure for the manufacturer's pallet loading problem, 1998; from memory). Stops at `enough` or after `steps`.
std::vector<Box> boxes_on(Size area, Size box, std::size_t enough, std::int64_t steps);

/// No more copies of `box` than this lie on the area at least `gap` apart, whole or by a quarter turn. Proof: a line
/// across the area meets n boxes lengthwise and m crosswise with n·a + m·b + (n + m − 1)·gap ≤ width. Averaged over all
/// lines, the counts lie in the convex hull of such pairs, and so along the other axis. Boxes at a corner from each other
/// may be closer along both axes; therefore the boxes are also taken as taller by a part of the gap, and the gap along
/// the line as what Pythagoras leaves of it. Without a gap, the area first loses what no row of boxes reaches.
std::size_t most_boxes(Size area, Size box, Length gap);

}  // namespace qw::parts::packing
