// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/region.h"

#include <cstddef>
#include <cstdint>

// Outlines as the search for a sheet's filling wants them. Its own types stand in a namespace of their own.
namespace qw::parts::packing {

/// Twice the area of a triangle in square units, positive when it turns left. Whole numbers, exact for coordinates
/// up to 10 m; fill_sheet lets none beyond.
std::int64_t turn_of(Point a, Point b, Point c);
inline constexpr Length largest_area = Length::mm(10000);

Point turned(Point point, int quarter_turns);
Region turned(const Region& region, int quarter_turns);

/// The rings that go round counter-clockwise, without corners on straight runs; rings of fewer than three corners
/// are dropped. Holes are ignored: nothing is packed into them.
Region outer_rings(const Region& region);

/// An area that holds `rings` within the same bounds with about `corners` corners, if that costs at most some tenths
/// of a millimetre: small steps of curves become tangents outside and chords inside. What has many corners for
/// another reason comes back as it is, or as its convex hull if it has far too many.
Region with_fewer_corners(const Region& rings, std::size_t corners);

Ring convex_hull(std::vector<Point> points);
std::size_t corners_of(const Region& region);

/// The same area whatever corner its rings start from.
bool same_area(const Region& a, const Region& b);

}  // namespace qw::parts::packing
