// SPDX-License-Identifier: GPL-3.0-or-later
// Lamps, moths and stars of the keeper's notebook.
#pragma once

#include "pen.h"

namespace art {

// Each stands on the point; height in mm.
void oil_lamp(Pen& pen, Point foot, double height);
void hand_lantern(Pen& pen, Point foot, double height);
void candle(Pen& pen, Point foot, double height);
void wall_lamp(Pen& pen, Point foot, double height);
// Rings and short rays of light around a flame.
void glow(Pen& pen, Point flame, double inner, double outer, Colour colour);
void flame(Pen& pen, Point base, double height);

// Seen from above with spread wings; kinds 0..3 differ in wing and mark.
void draw_moth(Pen& pen, Point at, double span, int kind, double tilt = 0);

}  // namespace art
