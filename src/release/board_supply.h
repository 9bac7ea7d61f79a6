// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/cutting_plan_sheet.h"
#include "compose/measure_rows.h"
#include "materials/list.h"
#include "release/read.h"

#include <vector>

namespace qw::release {

/// The sheets of board that buyers have for a kit on this paper: those that the kit lists, else the usual ones of the
/// paper's ruler.
std::vector<kit::Board> boards_for(const ReadKit& kit, const Paper& paper);

/// The cutting plans of one size; no plans where nothing is cut from board. Points to the column's measures.
compose::PlannedCutting cutting_of(const compose::SizeColumn& column, const std::vector<kit::Board>& boards);

/// What the plans ask the buyer to get: each kind of board once, with the plan that needs most of it when its grain may
/// run either way. A kind that some piece does not fit is left out: it is no way to choose.
std::vector<materials::BoardsNeeded> boards_needed(const ReadKit& kit, const compose::PlannedCutting& cutting);

}  // namespace qw::release
