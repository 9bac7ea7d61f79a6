// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"

#include <optional>
#include <vector>

namespace qw::compose {

/// The opened cover at true size, in the rounded lengths of the paper's own ruler: what the drawing on the measurements
/// sheet shows. The origin is the lower left corner of all that lies flat.
struct FlatCover {
    Size size;
    std::vector<Rect> boards;       ///< left, right
    std::optional<Rect> spine;      ///< a strip between the boards
    std::optional<Rect> tape;       ///< over spine and gaps; its ends are folded in at head and tail
    std::optional<Rect> paper;      ///< cover paper that is seen round the boards
    std::optional<Length> fold;     ///< x of the fold where there is no spine strip
    Length gap;                     ///< hinge gap; nothing: the template names none
    std::vector<Length> stations;   ///< on the spine or the fold, down from the head
};

/// For a template's `picture`: opened-cover (boards and a spine strip, joined by tape) or wrapped-cover (boards inside a
/// folded cover paper). Uses the pieces board, spine, hinge-tape and cover-paper and the lengths hinge-gap and
/// board-inset. Throws Fault (not_understood) for another picture or when a piece it needs is not there.
FlatCover flat_cover(const journal::Measures& measures);

}  // namespace qw::compose
