// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/map_reader.h"
#include "kit/part_template.h"
#include "kit/values.h"

#include <optional>
#include <vector>

namespace qw::kit {

/// Readers of what stands in many places of a part template, after the manner of values.h.

/// By how much of the larger one the two lengths of a pair may differ. Own limit: both are set by makers, not converted,
/// but what differs by more is a slip of the unit or of a digit.
inline constexpr double most_unlike = 0.3;

/// `metric` and `us`, both required, in a map that may hold more. Told when they are unlike.
void read_pair(MapReader& map, const LengthRange& range, BothLengths& into, Faults& faults);
/// { metric: 5 mm, us: 3/16 in }: 0.01 mm to 100 mm.
std::optional<BothLengths> pair_value(const Node& node, Faults& faults);

/// Two formulas for lengths in the flat net.
struct PlaceFormulas {
    Formula x, y;
};
/// [width / 2, height - hole_down]
std::optional<PlaceFormulas> place_value(const Node& node, Faults& faults);

/// A closed outline: it begins with a corner, plain or rounded, and has three steps or more, or two with an arc. Whether
/// it crosses itself is found out where its formulas are evaluated.
std::optional<std::vector<OutlineStep>> outline_value(const Node& node, Faults& faults);

/// front: true, back: false
std::optional<bool> side_value(const Node& node, Faults& faults);
/// up, left, down, right: quarter turns counter-clockwise, 0 to 3.
std::optional<int> direction_value(const Node& node, Faults& faults);

}  // namespace qw::kit
