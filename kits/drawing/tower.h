// SPDX-License-Identifier: GPL-3.0-or-later
// Lighthouses in elevation, engraved.
#pragma once

#include "pen.h"

namespace art {

enum class Daymark { plain, bands, spiral, upper_half, lattice };

struct Tower {
    double height = 70;  // base to gallery
    double base = 16;    // width below
    double top = 10;     // width at the gallery
    Daymark daymark = Daymark::bands;
    int bands = 3;
    Colour mark = kBrick;
    Colour wall = kPaper;
    Colour ink = kInk;
    Colour lamp = kStraw;
    bool house = true;
    int windows = 3;
};

// Stands on the point; y upwards from it.
void draw_tower(Pen& pen, Point foot, const Tower& tower);
// The height of the lamp above the foot.
double lamp_height(const Tower& tower);
// Beams as fans of fine lines, from the lamp to both sides.
void draw_beams(Pen& pen, Point lamp, double reach, Colour colour, double points = 0.3);
// A rock to stand on: the middle of its top is at the point.
void draw_rock(Pen& pen, Point top, double width, double height, Colour fill, Colour ink, unsigned seed);

}  // namespace art
