// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/journal_template.h"
#include "kit/map_reader.h"
#include "kit/values.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// Readers of what stands in many places of a journal template, after the manner of values.h.

/// Printable ASCII in one line of at most 500 characters; what it means is found out where it is evaluated.
std::optional<Formula> formula_value(const Node& node, Faults& faults);
/// A list of formulas. One that cannot be read is told and leaves an empty formula in its place, so that the others
/// keep their numbers.
std::optional<std::vector<Formula>> formulas_value(const Node& node, Faults& faults);
/// `metric` and `us`, both required, in a map that may hold more. True when both were read.
bool read_both(MapReader& map, const LengthRange& range, BothLengths& into);
/// Tells a length whose two values are so far apart that one of them must be a slip ("pair-differs"). Inch rulers have marks
/// 1/16 in apart, so that what is no farther than that from each other may be meant.
void check_pair(const Node& map, const BothLengths& both, Faults& faults);
/// { metric: 3 mm, us: 1/8 in }, more than nothing, each about the other.
std::optional<BothLengths> both_value(const Node& node, Faults& faults);
/// { metric: 0.5 mm, us: 1/16 in, way: up }
std::optional<RoundingRule> rounding_value(const Node& node, Faults& faults);
/// One of the words, as itself.
Reader<std::string> one_of(std::vector<std::string> words);

}  // namespace qw::kit
