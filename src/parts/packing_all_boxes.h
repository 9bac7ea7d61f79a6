// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/packing_boxes.h"

#include <optional>

namespace qw::parts::packing {

/// Looks through all ways to lay `count` boxes, whole or by a quarter turn: a way, or none when it is proved that there is
/// none, or nothing at all when `steps` do not suffice to tell.
///
/// Boxes pushed to the left and down until nothing moves have lower left corners at lengths of rows of boxes, in x and in
/// y (Herz 1972, Christofides and Whitlock 1977: normal patterns; from memory). These lengths part the area into cells. The
/// first cell that is not decided, row by row from below, is either the lower left one of a box or stays empty: all that
/// could reach it from elsewhere is decided. More must not stay empty than the area has beyond the boxes.
std::optional<std::vector<Box>> all_ways(Size area, Size box, std::size_t count, std::int64_t steps);

}  // namespace qw::parts::packing
