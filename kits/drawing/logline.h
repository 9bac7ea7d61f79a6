// SPDX-License-Identifier: GPL-3.0-or-later
// Chip, line, reel and sand-glass.
#pragma once

#include "pen.h"

namespace art {

void draw_log_line(Pen& pen, const Box& box);
void draw_sand_glass(Pen& pen, Point centre, double height);

}  // namespace art
