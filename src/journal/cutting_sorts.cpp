// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_sorts.h"

#include <algorithm>

namespace qw::journal::cutting {

std::vector<Sort> sorts_of(const std::vector<CutPiece>& pieces) {
    std::vector<Sort> sorts;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const CutPiece& piece = pieces[i];
        if (piece.count <= 0) continue;
        const bool has_grain = piece.grain == "height" || piece.grain == "width";
        Sort sort{piece.grain == "width" ? piece.size.turned() : piece.size, !has_grain && piece.size.width != piece.size.height, {}};
        if (sort.turnable) sort.size = sort.size.as_portrait();
        const auto same = std::find_if(sorts.begin(), sorts.end(),
                                       [&](const Sort& s) { return s.size == sort.size && s.turnable == sort.turnable; });
        Sort& into = same == sorts.end() ? sorts.emplace_back(sort) : *same;
        into.pieces.insert(into.pieces.end(), static_cast<std::size_t>(piece.count), i);
    }
    // Largest first, so that equal plans begin with the large pieces whatever order they were asked in.
    std::stable_sort(sorts.begin(), sorts.end(), [](const Sort& a, const Sort& b) { return a.area() > b.area(); });
    return sorts;
}

std::vector<HeldBoard> held_boards(const std::vector<BoardSupply>& supply, bool grain_matters) {
    std::vector<HeldBoard> held;
    for (std::size_t i = 0; i < supply.size(); ++i) {
        const kit::Board& board = supply[i].board;
        if (supply[i].most && *supply[i].most <= 0) continue;
        if (board.grain != "width") held.push_back({i, false, board.size});
        const bool either_way = board.grain != "height" && grain_matters && board.size.width != board.size.height;
        if (board.grain == "width" || either_way) held.push_back({i, true, board.size.turned()});
    }
    return held;
}

bool fits(const Sort& sort, const HeldBoard& board) {
    return board.holds(sort.size) || (sort.turnable && board.holds(sort.size.turned()));
}

}  // namespace qw::journal::cutting
