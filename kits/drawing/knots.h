// SPDX-License-Identifier: GPL-3.0-or-later
// Knots: ropes as curves, with what lies over and under told at each crossing in order.
#pragma once

#include <string>

#include "rope.h"

namespace art {

struct Strand {
    Path points;       // in the knot's own units, y downwards
    std::string over;  // one letter a crossing met along the strand: o over, u under
};

struct Knot {
    std::string name;
    std::vector<Strand> strands;
};

// Traditional knots.
Knot thumb_knot();
Knot figure_of_eight();
Knot reef_knot();
Knot sheet_bend();

struct KnotStyle {
    Rope rope;
    Colour second = kGlassSoft;  // fill of the second strand
    Colour paper = kPaper;
    Colour whipping = kBrick;  // round the rope's ends
    double scale = 6;          // mm for a unit of the knot
    double shown = 1;          // how much of the strand is tied yet, 0..1
};

// Throws std::logic_error when the crossings of the knot contradict each other.
void draw_knot(Pen& pen, Point centre, const Knot& knot, const KnotStyle& style);

}  // namespace art
