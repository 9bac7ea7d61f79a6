// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "journal/measures.h"
#include "texts/passages.h"

namespace qw::compose {

/// Draws how a signature is sewn: its fold from the side with its holes, and the thread with its moves numbered in the
/// order of the needle, solid outside on the spine and dashed inside the fold; both ends, and the knots. A block that is
/// sewn from the side lies open round its spine, its front above and its back below, with the turns round spine, head and tail. With several
/// rows of holes, or one thread that goes on from signature to signature, also the spine from outside with all rows and
/// the climbs. Not to scale; holes stand where they are in proportion, and move apart where they are close.
/// Draws nothing and returns false when the journal is not sewn or there is no room.
/// Words: pipeline/texts/drawings.mustache.
bool draw_stitch(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
