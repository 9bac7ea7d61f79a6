// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "journal/measures.h"
#include "texts/passages.h"

namespace qw::compose {

/// Draws the opened cover as the template's `picture` has it, fully dimensioned, with its stations set out beside or
/// below it unless that would make it tiny, as large as `room` lets it be at one of the usual scales (1 : 1 … 1 : 10). No label touches another or a
/// line, whatever the size. Draws nothing and returns false when there is not even room for 1 : 10, or the picture is `none`.
/// Words: pipeline/texts/drawings.mustache. Throws as flat_cover does.
bool draw_cover(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
