// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"

#include <string>

namespace qw::compose {

/// Dimensions of a drawing: a hair line between slim arrowheads, its figure in a gap of the line or, where there is no
/// room, beside it with the arrows from outside. Extension lines lead from the thing measured to the dimension line.

/// True when the figure has room between the arrowheads of a dimension of that length.
bool figure_in_line(const Canvas& canvas, Length dimension, const std::string& figure, const Setting& setting);

/// Along x, between x1 < x2 at height y; extension lines come from height `from`.
void dimension_across(Canvas& canvas, Length x1, Length x2, Length y, Length from, const std::string& figure, const Setting& setting);
/// Along y, between y1 < y2 at x; extension lines come from `from`. The figure is read from the right.
void dimension_up(Canvas& canvas, Length x, Length y1, Length y2, Length from, const std::string& figure, const Setting& setting);
/// A hair line from a dot on a thing to words beside it.
void leader(Canvas& canvas, Point dot, Point to);
/// A filled arrowhead with its tip at `tip`, pointing along (dx, dy), which is a unit direction.
void arrowhead(Canvas& canvas, Point tip, int dx, int dy);

}  // namespace qw::compose
