// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"

#include <vector>

namespace qw::parts {

/// A closed run of straight edges; the last corner joins the first.
using Ring = std::vector<Point>;

/// An area with straight edges: outer rings counter-clockwise, holes clockwise. Curves come in as chords that are
/// nowhere farther than `chord_error` from them.
using Region = std::vector<Ring>;
inline constexpr Length chord_error = Length::mm(0.01);

Region united(const Region& a, const Region& b);
Region united(const std::vector<Region>& all);
Region shared(const Region& a, const Region& b);
Region without(const Region& a, const Region& b);
/// Grown outward by `by` with round corners, or shrunk when it is negative.
Region grown(const Region& region, Length by);

double area_mm2(const Region& region);
/// The smallest rectangle around it; empty for an empty region.
Rect bounds(const Region& region);
Region moved(const Region& region, Length dx, Length dy);
/// By a map without unit in a…d and with points in e and f; rings keep the direction that their kind asks for.
Region mapped(const Region& region, const Matrix& map);
Point mapped(Point point, const Matrix& map);
bool holds(const Region& region, Point point);

}  // namespace qw::parts
