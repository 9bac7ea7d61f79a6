// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/flat_cover.h"
#include "texts/passages.h"

#include <string>
#include <vector>

namespace qw::compose {

/// Words and a figure for a spot of the flat cover.
struct Remark {
    Point spot;                  ///< at true size, as FlatCover has it
    std::string words, figure;
};

/// A distance on the flat cover, at true size.
struct Span {
    Length from, to;
    Length off;                  ///< where its extension lines come from: y of a distance across, x of one upward
    std::string figure;
    /// Said in words where the figure has no room between the arrows; no words: it is said elsewhere.
    Remark else_remark;
};

/// Everything that is measured on the flat cover, figures set with real fractions. Distances beside each other add up to
/// the whole to the last digit shown, or one of them is named as what is left.
struct CoverDimensions {
    std::vector<Span> across;    ///< in one line above the drawing, from the left
    std::vector<Span> whole;     ///< above that: the whole width; none where the parts are not joined
    std::vector<Span> up;        ///< beside the drawing, the nearest first
    std::vector<Remark> remarks; ///< what is too small for arrows, and pieces that lie under others
};

/// Words: pipeline/texts/drawings.mustache.
CoverDimensions cover_dimensions(const FlatCover& flat, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
