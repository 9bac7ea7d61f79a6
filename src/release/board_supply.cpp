// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/board_supply.h"

#include <algorithm>

namespace qw::release {

std::vector<kit::Board> boards_for(const ReadKit& kit, const Paper& paper) {
    const auto usual = kit.pipeline->usual_boards.find(paper.ruler);
    std::vector<std::string> names = kit.manifest.boards;
    if (names.empty() && usual != kit.pipeline->usual_boards.end()) names = usual->second;
    std::vector<kit::Board> boards;
    for (const std::string& name : names)
        if (const kit::Board* board = kit.pipeline->board(name)) boards.push_back(*board);
    return boards;
}

compose::PlannedCutting cutting_of(const compose::SizeColumn& column, const std::vector<kit::Board>& boards) {
    compose::PlannedCutting cutting{column.print, column.label, &column.measures, {}};
    if (const auto pieces = journal::board_pieces(column.measures); !pieces.empty()) cutting.plans = journal::board_plans(pieces, boards);
    return cutting;
}

std::vector<materials::BoardsNeeded> boards_needed(const ReadKit& kit, const compose::PlannedCutting& cutting) {
    std::vector<materials::BoardsNeeded> needed;
    const auto unfit = [&](const std::string& board) {
        return std::any_of(cutting.plans.begin(), cutting.plans.end(),
                           [&](const journal::BoardPlan& plan) { return plan.board.name == board && !plan.plan.not_cut.empty(); });
    };
    for (const journal::BoardPlan& plan : cutting.plans) {
        if (unfit(plan.board.name)) continue;
        const int count = static_cast<int>(plan.plan.boards.size());
        const auto known = std::find_if(needed.begin(), needed.end(), [&](const materials::BoardsNeeded& one) { return one.board == plan.board.name; });
        if (known == needed.end()) {
            needed.push_back({*kit.manifest.board_stock, plan.board.name, count, plan.plan.exact, ""});
        } else if (count > known->count) {
            known->count = count;
            known->exact = plan.plan.exact;
        }
    }
    return needed;
}

}  // namespace qw::release
