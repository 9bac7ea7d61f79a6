// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/folding.h"

#include <cstddef>
#include <vector>

namespace qw::parts {

/// Lengths as printed.
struct Bleeds {
    Length outward;                    ///< beyond cut lines: the set's bleed, for backs at least the shift of a turned sheet
    Length over_fold;                  ///< onto panels that do not show the face
};

/// Where one face's picture is seen, in the flat net as seen from its front, whichever side it is on.
struct FaceArea {
    std::size_t face = 0;              ///< index into Net::faces
    Rect frame;                        ///< Net's frame
    Rect canvas;                       ///< frame and bleed: what the artwork has to cover
    /// The picture is clipped to it: its panels, less what is glued, hidden or no-ink, and the bleed of what is left. What is
    /// hidden is printed as far as `outward` in, because what covers it may miss by that much; bleed over a fold is
    /// printed on glued tabs too, or the fold would show white.
    Region ink;
    double saved = 0;                  ///< share of panels and bleed that is left white, 0 … 1
};

/// All faces of one side, in the template's order; their areas do not overlap.
std::vector<FaceArea> printed(const Net& net, const Folded& folded, Side side, const Bleeds& bleeds);

/// Everything that is printed or cut, bleed included: what packing must keep apart.
Region footprint(const Net& net, const std::vector<FaceArea>& front, const std::vector<FaceArea>& back);

}  // namespace qw::parts
