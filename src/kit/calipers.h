// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/pipeline.h"
#include "kit/values.h"

#include <map>
#include <string>

namespace qw::kit {

/// A thickness of paper or board: 0.02 mm to 10 mm.
Reader<Length> caliper_value();
/// "1.25 cm3/g", 0.5 to 3.
Reader<double> bulk_value();
/// ISO 534: thickness = bulk (cm³/g) × grammage (g/m²).
Length caliper_of(double bulk, double grammage);

/// Reads `calipers` of a manifest: the thickness of stocks that the kit knows better, as a length or as a bulk.
std::map<std::string, Length> read_calipers(const Node& node, const Pipeline& pipeline, Faults& faults);

}  // namespace qw::kit
