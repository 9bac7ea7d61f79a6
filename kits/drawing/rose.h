// SPDX-License-Identifier: GPL-3.0-or-later
// Compass roses.
#pragma once

#include "lettering.h"

namespace art {

struct Rose {
    Colour ink = kInk;
    Colour light = kPaper;
    Colour second = kGlass;
    Colour accent = kBrick;
    bool degrees = true;  // ring of degrees and its figures
    bool letters = true;
};

// The outermost ring has the radius given; lettering stays inside it.
void draw_rose(Pen& pen, Point centre, double radius, const Rose& rose = {});
// Rays to the 32 winds, as on old charts, clipped by whoever calls.
void rhumbs(Pen& pen, Point centre, double reach, Colour colour, double points = 0.25);

}  // namespace art
