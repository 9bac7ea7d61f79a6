// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"

#include <optional>
#include <vector>

namespace qw::compose {

/// The pages of a concertina, partly opened between its boards: from above, y away from the reader, and from the front.
struct Zigzag {
    std::vector<Point> leaves;      ///< from above, from the left: every first a join, with a guard, at y 0, the boards' face; every second a fold
    Length guard;                   ///< width of a guard; nothing: the template has none
    Length low, high;               ///< from the front: tail and head of the pages
    int sheets = 0, drawn = 0;      ///< how many there are, and how many are drawn
};

/// The opened cover at true size, in the rounded lengths of the paper's own ruler: what the drawings show. The origin
/// is the lower left corner of all that lies flat. Parts beside each other add up to the whole.
struct FlatCover {
    Size size;
    std::vector<Rect> boards;       ///< left, right; none: a soft cover
    std::optional<Rect> spine;      ///< a strip between the boards
    std::optional<Rect> tape;       ///< over spine and gaps; its ends are folded in at head and tail
    std::optional<Rect> paper;      ///< cover paper that is seen round the boards, or the soft cover itself
    std::vector<Rect> turned_in;    ///< left and right cover papers before they are turned in round their boards
    std::optional<Rect> cloth;      ///< over spine and joints, before it is turned in at head and tail
    std::optional<Rect> panel;      ///< the part of a soft cover that is the spine
    std::optional<Length> fold;     ///< x of the fold where there is neither a spine strip nor a panel
    std::optional<Zigzag> zigzag;
    Length gap;                     ///< hinge gap or joint as its figure says; beside a fold what board and inset leave; nothing: the template names none
    Length turn_in;                 ///< of what is seen before it is turned in
    std::vector<Length> stations;   ///< on the spine or the fold, down from the head
    std::vector<Length> rows;       ///< x of the rows of holes; at least the middle
};

/// For a template's `picture`. Pieces and named lengths that it uses:
/// opened-cover: board, spine and hinge-tape if there, hinge-gap; wrapped-cover: cover-paper, board,
/// board-inset; case-cover: board, spine, spine-cloth, cover-paper if there, joint (else hinge-gap), turn-in;
/// soft-cover: soft-cover, spine-width; concertina: board, guard if there.
/// Throws Fault (not_understood) for another picture or when a piece it needs is not there.
FlatCover flat_cover(const journal::Measures& measures);

}  // namespace qw::compose
