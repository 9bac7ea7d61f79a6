// SPDX-License-Identifier: GPL-3.0-or-later
// The 24 faces of the almanac, in natural order: front, back, front, back.
#pragma once

#include "pen.h"

namespace art {

void title_face(Pen& pen);        // 1
void bookplate_face(Pen& pen);    // 2
void tide_table_face(Pen& pen);   // 3
void dot_shell_face(Pen& pen);    // 4
void light_face(Pen& pen);        // 5
void sound_chart_face(Pen& pen);  // 6
void knot_steps_face(Pen& pen);   // 7
void weather_face(Pen& pen);      // 8
void moon_face(Pen& pen);         // 9
void open_sea_face(Pen& pen);     // 10
void flag_face(Pen& pen);         // 11
void rose_face(Pen& pen);         // 12
void log_line_face(Pen& pen);     // 13
void shell_face(Pen& pen);        // 14
void two_tides_face(Pen& pen);    // 15
void harbour_face(Pen& pen);      // 16
void week_face(Pen& pen);         // 17
void six_lights_face(Pen& pen);   // 18
void knot_plate_face(Pen& pen);   // 19
void buoy_face(Pen& pen);         // 20
void sea_state_face(Pen& pen);    // 21
void month_face(Pen& pen);        // 22
void post_face(Pen& pen);         // 23
void closing_face(Pen& pen);      // 24

}  // namespace art
