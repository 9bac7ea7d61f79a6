// SPDX-License-Identifier: GPL-3.0-or-later
// The tide of an invented shore, and its tables and curves.
#pragma once

#include <string>
#include <vector>

#include "pen.h"

namespace art {

// Metres above low-water datum, hours since the first day's midnight: two half-daily waves that
// drift into and out of step give springs and neaps, a daily one makes the two tides unequal.
double tide_at(double hours);

struct Turn {
    double hours;
    double metres;
    bool high;
};

std::vector<Turn> turns_of(int day);  // day 0 is the first
std::string clock_of(double hours);   // "04:37"

// Days of tides as a table; fills the box's width and gives one row a day.
void draw_tide_table(Pen& pen, const Box& box, int first_day, int days, double first_row);
// The curve over some days, filled to the foot of the box.
void draw_tide_curve(Pen& pen, const Box& box, double from_hours, double to_hours, Colour fill, Colour line,
                     double points);

}  // namespace art
