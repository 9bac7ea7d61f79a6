// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/artwork_finder.h"
#include "kit/manifest.h"
#include "kit/node.h"
#include "kit/pipeline.h"

#include <string>
#include <vector>

namespace qw::kit {

/// What the names in a set may refer to.
struct SetContext {
    const Pipeline& pipeline;
    std::vector<std::string> set_names;   ///< all sets of the manifest
};

/// Reads one entry of `sets`. Keys that have no meaning for the set's role are refused. A role that cannot be read is
/// taken for `extra`, and the rest is read all the same.
Set read_set(const Entry& entry, const SetContext& context, ArtworkFinder& finder, Faults& faults);

/// The keys that a set may have, for hints about keys that stand in the wrong place.
const std::vector<std::string>& set_keys();

}  // namespace qw::kit
