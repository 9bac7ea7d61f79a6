// SPDX-License-Identifier: GPL-3.0-or-later
// Full sheets for covering boards and lining them: patterns to every edge, good from any side.
#pragma once

#include "pen.h"

namespace art {

void night_cover(Pen& pen);
void chart_cover(Pen& pen);
void wave_cover(Pen& pen);
void knot_cover(Pen& pen);
void lining_paper(Pen& pen);

}  // namespace art
