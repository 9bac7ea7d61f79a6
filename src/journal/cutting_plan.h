// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "kit/pipeline.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::journal {

/// What has to be cut: `count` pieces of one size, as they are measured with the ruler.
struct CutPiece {
    std::string name, title;
    Size size;                     ///< both sides more than nothing
    int count = 1;
    std::string grain = "any";     ///< "height" or "width": along which of its sides the grain runs; else it does not matter
};

/// A kind of board to cut from; `most` of them, or as many as it takes.
struct BoardSupply {
    kit::Board board;              ///< both sides more than nothing; each less than 2 m, so that areas are exact
    std::optional<int> most;
};

/// A piece on a board. Lengths from the board's lower left corner.
struct PlacedPiece {
    std::size_t piece = 0;         ///< index into the pieces that were asked for
    Rect at;
    bool turned = false;           ///< lies on its side: its width runs along the board's height
};

/// A straight cut that goes through the whole of one part from edge to edge, as a guillotine or a knife along a ruler
/// cuts. The part is `of`; the cut is the line y = at (across) or x = at (up).
struct StraightCut {
    Rect of;
    bool across = false;
    Length at;                     ///< from the board's lower left corner
};

struct CutBoard {
    std::size_t board = 0;         ///< index into the supply
    /// Along which side of this board its grain has to run: "height" or "width"; "any" when no piece on it cares.
    std::string grain;
    std::vector<PlacedPiece> pieces;
    std::vector<StraightCut> cuts; ///< in the order of the work: a part is cut out before it is divided itself
    std::vector<Rect> left_over;   ///< largest first
    double used = 0;               ///< area of the pieces ÷ area of the board
};

/// Pieces that the plan leaves out.
struct NotCut {
    enum class Because { larger_than_every_board, no_board_left } because = Because::larger_than_every_board;
    std::size_t piece = 0;
    int count = 0;                 ///< how many of it
    /// When it is larger: the board that lacks least, and how much of the piece's width and height stands out there.
    std::size_t board = 0;
    Size lacking;
    bool fits_against_grain = false;  ///< it is its grain alone that keeps it from a board
};

struct CuttingPlan {
    std::vector<CutBoard> boards;  ///< fullest first
    bool exact = false;            ///< proven: no other way needs fewer boards (or, when boards run out, cuts more of the area)
    std::vector<NotCut> not_cut;
};

/// How the pieces come out of the boards with straight through-cuts alone, with a knife that takes nothing away, every
/// piece's grain along the board's. A board of unknown grain may have it either way, but one way only.
///
/// Minimised, one after the other: what cannot be cut because boards run out (by area); the number of boards; their
/// area; and what is left is wanted in one large remainder, not in strips: the largest part that a single cut takes
/// off one of the boards is as large as can be. The last is a choice between plans of equally few boards only.
///
/// Finding the fewest is NP-hard (bin packing is a case of it), so it is proven up to a bound: for ten pieces or fewer,
/// for more when they are so alike that no more than 1024 different selections of them exist, and for any number when a
/// plan meets a lower bound (area; pieces no two of which share a board). Else the plan is the best of several greedy
/// ones, and `exact` is false. Cuts that divide parts further and further are the patterns of P. C. Gilmore and
/// R. E. Gomory, Multistage cutting stock problems of two and more dimensions, Operations Research 13, 1965; that every
/// such pattern is two smaller ones side by side or on each other is what the proof goes through.
///
/// Pieces of equal size and grain are one sort, whatever their names. Sorts of which there are none are passed over.
/// The same input gives the same plan. Holds nothing of what it was given.
CuttingPlan cutting_plan(const std::vector<CutPiece>& pieces, const std::vector<BoardSupply>& supply);

}  // namespace qw::journal
