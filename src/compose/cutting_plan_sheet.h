// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "journal/board_plans.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What the sheet shows for one print at one size.
struct PlannedCutting {
    Print print = Print::borderless;
    std::string label;                        ///< "100 %"
    const journal::Measures* measures = nullptr;
    std::vector<journal::BoardPlan> plans;    ///< of board_pieces(*measures); each kind of board is an alternative
};

/// How the pieces are cut from the boards that buyers have: for each print and each kind of board the plan drawn to a
/// stated scale with numbered cuts, and the list of the cuts. Words: pipeline/texts/cutting-plan.mustache. Where
/// nothing is cut from board, the sheet holds no plan; better leave it out.
Document cutting_plan_sheet(const SheetContext& context, const std::vector<PlannedCutting>& cuttings);

}  // namespace qw::compose
