// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/bundle_rules.h"

namespace qw::checks {

/// The bytes of a zip, whoever made it: whether every computer and phone opens it, and takes the same files out of it. The bundle
/// is a zip that could be read (no damage).
void check_zip(const Rules& rules, const PackedBundle& bundle, Findings& findings);

/// What lies in it: programs, archives, links, empty files, what desktops leave behind.
void check_packed_files(const Rules& rules, const PackedBundle& bundle, Findings& findings);

/// Names as other systems take them. Those that hold our custom need not ask all of it.
void check_packed_names(const Rules& rules, const PackedBundle& bundle, Findings& findings);

}  // namespace qw::checks
