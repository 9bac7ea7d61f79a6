// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/packing_search.h"

#include <cstddef>

namespace qw::parts::packing {

/// No more copies than this lie on the area, `gap` apart: by what they and half the gap round them take of it, and by
/// rectangles that lie in the shape (most_boxes).
std::size_t most_copies(const Region& shape, Size area, Length gap);

/// It is proved that no two copies lie on the area: what one of them blocks covers all places for another. The shape is
/// taken a little smaller than it is, so that rounding cannot spoil the proof.
bool one_at_most(const Region& shape, Size area, Length gap, const std::vector<int>& turns);

}  // namespace qw::parts::packing
