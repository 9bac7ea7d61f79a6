// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/folding.h"

#include <optional>
#include <vector>

namespace qw::parts {

/// A state with what is asked of it again and again: where each panel lies, and which of two that overlap is above.
struct Lying {
    State poses;
    std::vector<Region> placed;
    /// order[a][b]: 1 when a lies above b, that is nearer to the viewer; -1 below; 0 when they do not overlap.
    std::vector<std::vector<int>> order;
};

Lying lying_flat(const std::vector<Panel>& panels);
/// From poses whose levels tell the order.
Lying lying_as(const std::vector<Panel>& panels, const State& state);

/// Levels from the order: a panel is one above the highest that lies under it. Nothing when panels lie over each other in
/// a ring, so that no levels tell their order.
std::optional<std::vector<int>> levels_of(const std::vector<std::vector<int>>& order);

/// Where at least one, at least two … of the regions lie over each other; ends with the last that is an area.
std::vector<Region> depths_of(const std::vector<Region>& regions);

/// From the state back to the flat net.
Matrix back_to_flat(const Pose& pose);

}  // namespace qw::parts
