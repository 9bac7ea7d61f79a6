// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "kit/pipeline.h"
#include "parts/net.h"

namespace qw::parts {

/// From the middle of a hole to the nearest cut line of the flat net, as printed: how far a punch has to reach.
Length from_cut(const Net& net, const Hole& hole);

/// The tool with which the hole is made: the template's, or what that tool's data name for holes beyond its reach.
/// Empty when the template names none.
std::string tool_for(const Net& net, const Hole& hole, const kit::Pipeline& pipeline);

/// Note `part-hole-reach` for each hole that the template's tool does not reach.
Findings holes_out_of_reach(const Net& net, const kit::Pipeline& pipeline);

}  // namespace qw::parts
