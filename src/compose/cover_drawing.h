// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "journal/measures.h"
#include "texts/passages.h"

namespace qw::compose {

/// Draws the opened cover, dimensioned, with its stations set out beside it, as large as `room` lets it be at one of the
/// usual drawing scales (1 : 1 … 1 : 10). Draws nothing and returns false when there is not even room for 1 : 10.
/// Words come from the passages scale, stations-heading, head, gap and tape of `words`.
bool draw_cover(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
