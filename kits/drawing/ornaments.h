// SPDX-License-Identifier: GPL-3.0-or-later
// Small things of the shore: boats, gulls, stars, buoys.
#pragma once

#include "pen.h"

namespace art {

void draw_boat(Pen& pen, Point waterline, double size, Colour sail, Colour ink);
void draw_gull(Pen& pen, Point at, double span, Colour ink, double tilt = 0);
void draw_star(Pen& pen, Point at, double radius, Colour fill, int points = 4, double waist = 0.28);
// Buoys of our own shapes, 0..5; floats at the point, about 20 units tall times scale.
void draw_buoy(Pen& pen, Point waterline, double scale, int kind);
// A page-wide tone to every edge of the canvas.
void ground(Pen& pen, Colour colour);

}  // namespace art
