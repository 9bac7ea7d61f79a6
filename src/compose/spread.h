// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"

#include <optional>
#include <vector>

namespace qw::compose {

/// Places along a line, between `low` and `high`, for things that want to stand at `wanted` (ascending) but need
/// `gaps[i]` from the i-th to the next. Order is kept, and no other places are nearer to the wanted ones (least
/// squares, found by pooling neighbours that push each other). Nothing when they cannot all stand there.
std::optional<std::vector<Length>> spread(const std::vector<Length>& wanted, const std::vector<Length>& gaps, Length low, Length high);
/// The same with one gap for all.
std::optional<std::vector<Length>> spread(const std::vector<Length>& wanted, Length gap, Length low, Length high);

}  // namespace qw::compose
