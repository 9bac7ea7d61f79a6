// SPDX-License-Identifier: GPL-3.0-or-later
// The moon at any age.
#pragma once

#include "pen.h"

namespace art {

// Age 0 is new, 0.5 full, 1 new again; seen from the north, so it waxes from the right. The dark
// part is hatched rather than filled: less ink.
void draw_moon(Pen& pen, Point centre, double radius, double age, Colour ink, Colour lit);

}  // namespace art
