// SPDX-License-Identifier: GPL-3.0-or-later
// A smooth invented landscape: height over the canvas, and the outlines of what is above a level.
#pragma once

#include <vector>

#include "geometry.h"

namespace art {

struct Hill {
    Point at;
    double height;
    double reach;
    double stretch = 1;  // wider than tall when above 1
};

class Field {
public:
    // Hills over a sloping sea floor, roughened by value noise of the seed.
    Field(std::vector<Hill> hills, double floor, double roughness, unsigned seed);
    double at(Point p) const;
    // Closed outlines of the region above the level inside the box and one cell around it.
    std::vector<Path> above(double level, const Box& box, double cell = 1.0) const;

private:
    double noise(Point p) const;
    double corner(long ix, long iy) const;

    std::vector<Hill> hills_;
    double floor_;
    double roughness_;
    unsigned seed_;
};

}  // namespace art
