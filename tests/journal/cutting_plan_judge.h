// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_plan.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::test {

/// What is wrong with a plan, judged from what it shows alone; empty: nothing. Knows nothing of how it was made.
std::string what_is_wrong(const journal::CuttingPlan& plan, const std::vector<journal::CutPiece>& pieces,
                          const std::vector<journal::BoardSupply>& supply);

/// What is best about a plan, in the order of the header's objectives; areas in mm².
struct Merit {
    int boards = 0;
    long area = 0, remainder = 0;
    friend bool operator==(const Merit&, const Merit&) = default;
};
/// The best that there is, found by trying everything: every way to share the pieces out to boards, every straight cut
/// at every whole millimetre. For few pieces and few millimetres; all sizes whole millimetres. Nothing: boards run out.
std::optional<Merit> best_by_trying(const std::vector<journal::CutPiece>& pieces, const std::vector<journal::BoardSupply>& supply);
Merit merit_of(const journal::CuttingPlan& plan, const std::vector<journal::BoardSupply>& supply);

}  // namespace qw::test
