// SPDX-License-Identifier: GPL-3.0-or-later
// Engraved seas: rows of crested waves, nearer rows in front of farther ones.
#pragma once

#include "pen.h"

namespace art {

struct Sea {
    Colour far = kPaper;       // fill of the first row
    Colour near = kGlassPale;  // fill of the last row
    Colour line = kInkMid;
    double points = 0.5;
    int rows = 8;
    double wavelength = 18;   // of the last row; farther rows are shorter
    double steepness = 0.75;  // 0 ripples, 1 cusps
    int echoes = 4;           // fine lines that follow each crest
    unsigned seed = 1;
};

// Fills the box from its top edge down; the rows run over both sides, so clip or bleed.
void draw_sea(Pen& pen, const Box& box, const Sea& sea);

// One wave line for rules and feet, centred.
void wave_rule(Pen& pen, Point centre, double width, Colour colour, double points = 0.5);

}  // namespace art
