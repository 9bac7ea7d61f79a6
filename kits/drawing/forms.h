// SPDX-License-Identifier: GPL-3.0-or-later
// What is written on: rules, dots, squares, tables, heads and feet of book pages.
#pragma once

#include <string>
#include <vector>

#include "lettering.h"

namespace art {

inline constexpr double kRuling = 7;  // mm between writing lines

// Head of a book page: small caps on a fine rule. Returns where the page's content may begin.
double page_head(Pen& pen, const Box& page, const std::string& title, const std::string& note = {}, Colour ink = kInk);
void page_foot(Pen& pen, const Box& page, const std::string& text, Colour ink = kInkMid);

void ruled(Pen& pen, const Box& box, double gap = kRuling, Colour ink = kInkSoft);
void dotted(Pen& pen, const Box& box, double gap = 5, Colour ink = kInkSoft, double radius = 0.19);
void squared(Pen& pen, const Box& box, double gap = 5, Colour ink = kInkPale);

struct Column {
    std::string title;
    double share;  // of the width
};

// An empty table with a tinted head; returns the row height.
double blank_table(Pen& pen, const Box& box, const std::vector<Column>& columns, int rows, Colour tint = kGlassPale);
// "Name ________" on one line of the width.
void blank_field(Pen& pen, Point at, double width, const std::string& label);
void check_boxes(Pen& pen, const Box& box, int rows);
// Double rule with small lozenges at the corners.
void rule_frame(Pen& pen, const Box& box, Colour ink = kInk);

}  // namespace art
