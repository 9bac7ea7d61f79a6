// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"

#include <set>
#include <string>
#include <vector>

namespace qw::checks {

/// What lies in a kit's folder beside what the manifest names. `all`: every file, relative to the kit, with / between
/// folders; `named`: those that the manifest uses; `whole`: there is no more than `all`.
void check_folder(const Rules& rules, const std::vector<std::string>& all, const std::set<std::string>& named, bool whole, Findings& findings);

}  // namespace qw::checks
