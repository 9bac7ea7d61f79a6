// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "journal/measures.h"
#include "texts/passages.h"

namespace qw::compose {

/// Draws how a corner is cut before the cover paper is turned in: the corner of the board on the back of the paper, the
/// turn-ins, and the cut at 45°, `corner-cut` from the board's corner; with dimensions, at a usual scale up to 2 : 1.
/// Uses the named lengths turn-in and corner-cut. Draws nothing and returns false when the template lacks one of them
/// or there is no room. Words: pipeline/texts/drawings.mustache.
bool draw_corner(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
