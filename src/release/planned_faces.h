// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "compose/placement.h"
#include "release/look.h"

#include <vector>

namespace qw::release {

/// A face of a set as the sheets are composed from it.
compose::Face as_composed(const LookedSet& set, const Face& face);
std::vector<compose::Face> as_composed(const LookedSet& set);

/// What each file of a set's artwork is.
void check_files(const LookedSet& set, const checks::Rules& rules, Findings& findings);

/// What the pictures of the whole kit are beside each other.
void check_together(const std::vector<LookedSet>& looked, const checks::Rules& rules, Findings& findings);

/// Adds what has not been said: a face is told once for all editions that say the same of it.
void add_new(Findings& findings, const Findings& more);

}  // namespace qw::release
