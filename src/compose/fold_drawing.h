// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "parts/folding.h"

namespace qw::compose {

/// One state of a part while it is folded, seen from the front, to the largest scale that fits `into`, centred: panels by
/// their levels, what lies behind dashed, the side that is up told by tone and by a word, score lines of the next fold
/// with an arrow that says which way, tabs hatched. Returns the scale of the drawing (drawn ÷ printed).
double draw_fold(Canvas& canvas, const Rect& into, const parts::Net& net, const parts::Folded& folded, std::size_t state);

}  // namespace qw::compose
