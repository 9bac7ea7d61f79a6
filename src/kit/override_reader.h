// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/manifest.h"
#include "kit/node.h"
#include "kit/pipeline.h"

#include <vector>

namespace qw::kit {

/// Where the rules stand that a kit may set otherwise.
struct RuleSources {
    const Pipeline& pipeline;
    const JournalTemplate* journal = nullptr;  ///< the kit's own; null: not known, which has been told
};

/// Reads `rules` of a manifest: { artwork-ppi: { limit: 200 ppi, level: note, reason: … } }. A rule stands in
/// checks.yaml or is `journal-` and the name of a check of the kit's journal. A limit may be set only where the rule has
/// one (in the rule's unit; lengths always carry a unit); those of a journal are formulas of its template. A reason must
/// be given.
std::vector<Override> read_overrides(const Node& node, const RuleSources& sources, Faults& faults);

}  // namespace qw::kit
