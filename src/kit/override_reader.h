// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/manifest.h"
#include "kit/node.h"
#include "kit/pipeline.h"

#include <vector>

namespace qw::kit {

/// Reads `rules` of a manifest: { artwork-ppi: { limit: 200 ppi, level: note, reason: … } }. A rule must stand in
/// checks.yaml, a limit may be set only where the rule has one (in the rule's unit; lengths always carry a unit), and
/// a reason must be given.
std::vector<Override> read_overrides(const Node& node, const Pipeline& pipeline, Faults& faults);

}  // namespace qw::kit
