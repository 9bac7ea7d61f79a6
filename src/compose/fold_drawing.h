// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "parts/folding.h"
#include "texts/passages.h"

#include <limits>

namespace qw::compose {

/// From where a state is looked at, and whether the next fold is shown on it.
struct FoldView {
    bool from_behind = false;          ///< turned over sideways
    bool next = false;                 ///< with an arrow, and a sentence below
};

/// As hands do it: paper is folded towards oneself, so a part is turned over before a mountain fold, and stays so after
/// the last. Flat it is seen as it is cut out, from its front, without an arrow.
FoldView usual_view(const parts::Net& net, std::size_t state);

/// One state of a part while it is folded, to the largest scale that fits `into` and is no larger than `at_most`,
/// centred: panels by their levels, what lies behind dotted, the side that is up told by tone and by a word, tabs
/// hatched, with dots where their glue is below; score lines that are still flat, those of the next fold heavy, with an
/// arrow and a sentence that say which way. Returns the scale of the drawing (drawn ÷ printed). `words` are
/// pipeline/texts/part-labels.mustache.
double draw_fold(Canvas& canvas, const Rect& into, const parts::Net& net, const parts::Folded& folded, std::size_t state, const FoldView& view,
                 const texts::Passages& words, double at_most = std::numeric_limits<double>::infinity());

/// The scale at which it would be drawn.
double fold_scale(const type::Fonts& fonts, Size into, const parts::Net& net, const parts::Folded& folded, std::size_t state, const FoldView& view,
                  const texts::Passages& words);

}  // namespace qw::compose
