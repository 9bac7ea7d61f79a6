// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_layout.h"

#include <vector>

namespace qw::journal::cutting {

/// Good layouts for many pieces: board after board is filled by putting the next piece into one of the free parts and
/// cutting the rest of that part in two, with several orders of the pieces and several rules for which part and which
/// cut; the best of all is taken. Every sort has to fit on some board. Where boards run out, pieces are left out.
std::vector<Layout> greedy_layouts(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply);

/// As many boards as the pieces need at least: by their area, and by pieces no two of which go on one board.
std::size_t fewest_thinkable(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply);

}  // namespace qw::journal::cutting
