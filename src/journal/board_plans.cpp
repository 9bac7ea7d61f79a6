// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/board_plans.h"

#include <algorithm>
#include <tuple>

namespace qw::journal {

namespace {

BoardPlan plan_on(const std::vector<CutPiece>& pieces, const kit::Board& board, const std::string& grain) {
    kit::Board found = board;
    if (!grain.empty()) found.grain = grain;
    return {board, grain, cutting_plan(pieces, {{found, std::nullopt}})};
}

bool leaves_less(const BoardPlan& a, const BoardPlan& b) {
    return std::tuple(a.plan.not_cut.size(), a.plan.boards.size()) < std::tuple(b.plan.not_cut.size(), b.plan.boards.size());
}

}  // namespace

std::vector<CutPiece> board_pieces(const Measures& measures) {
    const bool one_stock = measures.conditions.spine_stock.name == measures.conditions.board_stock.name;
    std::vector<CutPiece> pieces;
    for (const Piece& piece : measures.pieces) {
        const bool of_board = piece.of->stock == "board" || (piece.of->stock == "spine" && one_stock);
        if (!of_board || piece.count <= 0) continue;
        pieces.push_back({piece.of->name, piece.of->title, {piece.width.rounded, piece.height.rounded}, piece.count, piece.of->grain});
    }
    return pieces;
}

std::vector<BoardPlan> board_plans(const std::vector<CutPiece>& pieces, const std::vector<kit::Board>& boards) {
    const bool grain_matters = std::any_of(pieces.begin(), pieces.end(), [](const CutPiece& p) { return p.count > 0 && p.grain != "any"; });
    std::vector<BoardPlan> plans;
    for (const kit::Board& board : boards) {
        const bool known = board.grain == "height" || board.grain == "width";
        if (!grain_matters || known || board.size.width == board.size.height) {
            plans.push_back(plan_on(pieces, board, grain_matters && known ? board.grain : ""));
            continue;
        }
        BoardPlan up = plan_on(pieces, board, "height"), along = plan_on(pieces, board, "width");
        if (leaves_less(along, up)) std::swap(up, along);
        plans.push_back(std::move(up));
        plans.push_back(std::move(along));
    }
    return plans;
}

}  // namespace qw::journal
