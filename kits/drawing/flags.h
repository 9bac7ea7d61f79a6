// SPDX-License-Identifier: GPL-3.0-or-later
// Signal flags of our own invention: they are no code in use at sea.
#pragma once

#include "pen.h"

namespace art {

inline constexpr int kFlagCount = 24;

void draw_flag(Pen& pen, const Box& box, int number);
// Flags on a sagging line between two points.
void bunting(Pen& pen, Point from, Point to, double sag, int count, double size, int first);

}  // namespace art
