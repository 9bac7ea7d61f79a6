// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_plan.h"
#include "journal/measures.h"

#include <string>
#include <vector>

namespace qw::journal {

/// What a journal needs cut from its board: the pieces of the stock "board", and those of the stock "spine" when it is
/// the same stock, in the sizes that the sheets tell people with the paper's own ruler.
std::vector<CutPiece> board_pieces(const Measures& measures);

/// The pieces on one kind of board, as many of it as it takes.
struct BoardPlan {
    kit::Board board;      ///< as it is listed: its grain may be unknown
    std::string grain;     ///< the grain that this plan goes by, "height" or "width"; empty: it makes no difference
    CuttingPlan plan;
};

/// Every kind of board by itself, in the order given. A board of unknown grain has two plans, one for each way the
/// buyer may find it, the one with fewer boards first: all boards of one pack have it the same way. One plan where
/// its ways are alike: the board is square, or no piece has a grain.
std::vector<BoardPlan> board_plans(const std::vector<CutPiece>& pieces, const std::vector<kit::Board>& boards);

}  // namespace qw::journal
