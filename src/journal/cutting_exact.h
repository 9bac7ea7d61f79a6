// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_fronts.h"

#include <vector>

namespace qw::journal::cutting {

/// The best plan of all, by going through every selection: which selections fit on which board comes from the fronts,
/// and the best plan of a selection is the best of one board's part and the best plan of the rest. Every sort has to
/// fit on some board; Selections::few has to hold. Where boards run out, pieces are left out.
std::vector<Layout> exact_layouts(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply);

}  // namespace qw::journal::cutting
