// SPDX-License-Identifier: GPL-3.0-or-later
// Laid rope along a path.
#pragma once

#include "pen.h"

namespace art {

struct Rope {
    double thickness = 2.4;
    Colour fill = kBuffMid;
    Colour line = kInk;
    double points = 0.5;
};

// A stretch of rope from arc length `from` to `to` of a path; the lay runs on from one stretch to
// the next. A negative `to` means the whole path.
void draw_rope(Pen& pen, const Path& path, const Rope& rope, double from = 0, double to = -1);
// The same with paper around it, so that it seems to lie above what it crosses.
void draw_rope_above(Pen& pen, const Path& path, const Rope& rope, Colour paper, double from, double to);
// A frame of rope, corners rounded.
void rope_frame(Pen& pen, const Box& box, double radius, const Rope& rope);

double length_of(const Path& path);
Point point_at(const Path& path, double along);
// Even points, close together, on a curve through the given points.
Path curve_through(const Path& points, bool closed = false);

}  // namespace art
