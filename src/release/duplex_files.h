// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/reload_drawing.h"
#include "release/plan.h"

#include <vector>

namespace qw::release {

/// The sets of this paper that are printed on both sides, for the print check: pages and turn of each, in the order of
/// the plan. A set whose prints have different numbers of pages, or turn otherwise, is told once a print. Generated
/// sheets are none of them.
std::vector<compose::DuplexFile> duplex_files(const std::vector<PlannedFile>& planned, const Paper& paper);

}  // namespace qw::release
