// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "compose/strip_parts.h"
#include "texts/passages.h"

#include <vector>

namespace qw::compose {

/// A strip that is laid into the fold of a signature, and on the spine, to pierce holes through. True lengths, from the
/// head of the pages down.
struct JigStrip {
    Length length;                  ///< as high as the page
    std::vector<Length> page;       ///< holes in the pages, on the strip's fold
    std::vector<Length> spine;      ///< holes in the spine, as marks on the right edge, middle on middle
    Length middle() const { return length / 2; }
};

inline constexpr Length jig_width = Length::mm(30);

/// Draws one part of the strip with its upper left corner at `at`. Marks with which it is joined to the other parts
/// stand at the ends that are no end of the strip. `index` counts the parts from 0.
/// Words: pipeline/texts/hole-jig.mustache.
void draw_jig_part(Canvas& canvas, Point at, const JigStrip& strip, const std::vector<StripPart>& parts, std::size_t index,
                   const texts::Passages& words);

/// A mark that is whole when two parts of a strip are laid end to end: half of a diamond on either part, and a letter.
/// `inward` is the unit direction from the joined end into the part.
void match_mark(Canvas& canvas, Point on_edge, int inward_x, int inward_y, std::size_t joint);

}  // namespace qw::compose
