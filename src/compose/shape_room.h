// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "compose/document.h"
#include "parts/region.h"

#include <optional>
#include <vector>

namespace qw::compose {

/// Room inside areas that are no rectangles: for hatching, and for words that must meet no line.

struct Stroke {
    Point from, to;
};

Length length_of(const Stroke& stroke);
/// Some of it lies inside the rectangle.
bool runs_through(const Stroke& stroke, const Rect& rect);

/// Parallel lines at 45°, rising to the right, `gap` apart, that end at the area's edges. They lie on one grid all over
/// the page, so that areas that meet are hatched as one.
std::vector<Stroke> hatching(const parts::Region& area, Length gap);
/// Strokes as one outline.
Outline strokes_outline(const std::vector<Stroke>& strokes, Length weight, std::vector<Length> dash = {});

/// The corners of an area's rings as strokes.
std::vector<Stroke> edges_of(const parts::Region& area);
parts::Region region_of(const Rect& rect);
/// Quarter turns and reflections keep rectangles upright.
Rect mapped(const Rect& rect, const Matrix& map);

/// Where a box of this size lies wholly inside the area and meets none of the strokes, nearest to `wanted`: its middle.
std::optional<Point> room_for(Size box, const parts::Region& area, const std::vector<Stroke>& strokes, Point wanted);

}  // namespace qw::compose
