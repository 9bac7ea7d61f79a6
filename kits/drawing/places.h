// SPDX-License-Identifier: GPL-3.0-or-later
// The invented shores that charts show.
#pragma once

#include "field.h"
#include "pen.h"

namespace art {

Field hollin_sound();             // over the whole canvas, land to the west and north
Field withy_haven();              // over the left book page
Field open_banks(unsigned seed);  // islands and banks over the whole canvas

// A shore as seen from a boat, engraved.
void draw_coast_view(Pen& pen, const Box& box);

}  // namespace art
