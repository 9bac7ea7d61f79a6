// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

namespace qw::checks {

/// What printing one sheet would show: numbers of risks, each below the number of all.
using Shows = std::vector<std::size_t>;

/// The fewest sheets that together show every risk that any of them shows: exact, by branch and bound with the greedy
/// answer as the first bound. Of several answers as short, the one with the earliest sheets, compared one by one. Indices
/// into `sheets`, ascending. Throws nothing; a risk that no sheet shows is left out, `unshown` tells those.
std::vector<std::size_t> fewest_sheets(const std::vector<Shows>& sheets, std::size_t risks);

/// Risks that no sheet shows.
std::vector<std::size_t> unshown(const std::vector<Shows>& sheets, std::size_t risks);

}  // namespace qw::checks
