// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/node.h"
#include "kit/part_template.h"
#include "kit/pipeline.h"

#include <string>
#include <vector>

namespace qw::kit {

/// What a part may name outside itself: what materials.yaml holds.
struct PartContext {
    const std::vector<Tool>& tools;
    const std::vector<Material>& materials;
};

/// Reads a part template whose tree is `root`; `file` is "pipeline/parts/NAME.yaml". The format's page is
/// src/kit/part-template.md. Formulas are taken as texts: what they mean is found out where they are evaluated.
PartTemplate read_part(const Node& root, const std::string& file, const PartContext& context, Faults& faults);

}  // namespace qw::kit
