// SPDX-License-Identifier: GPL-3.0-or-later
// Chart fragments of places that do not exist.
#pragma once

#include <string>
#include <vector>

#include "field.h"
#include "pen.h"

namespace art {

struct ChartTone {
    Colour land = kBuffMid;
    Colour foreshore = kGlassSoft;
    Colour shallow = kGlassPale;
    Colour water = kPaper;
    Colour coast = kInk;
    Colour contour = kGlassDeep;
    Colour sounding = kInkMid;
    double points = 0.6;
};

// Shores, depth contours and heights inside the box. Levels above 0 are land.
void draw_ground(Pen& pen, const Box& box, const Field& field, const ChartTone& tone);
// Depths in metres on a loose grid, none inside the boxes to be kept free.
void draw_soundings(Pen& pen, const Box& box, const Field& field, const ChartTone& tone, const std::vector<Box>& free,
                    unsigned seed, double spacing = 9);
// A ladder of black and white divisions around the box, with small marks inside it.
void draw_chart_frame(Pen& pen, const Box& box, Colour ink, double division = 6);
// Small marks of a chart; the point is the place marked.
void light_mark(Pen& pen, Point at, double size);
void rock_mark(Pen& pen, Point at);
void wreck_mark(Pen& pen, Point at);
void anchor_mark(Pen& pen, Point at, double size, Colour ink);
void scale_bar(Pen& pen, Point at, double width, int parts, const std::string& unit);

}  // namespace art
