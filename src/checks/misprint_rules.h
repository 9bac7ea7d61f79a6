// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "kit/manifest.h"
#include "proof/misprint.h"

#include <string>

namespace qw::checks {

/// The misprint that pages must bear: the limits of `misprint-safe-area` (enlargement a side) and `misprint-shift`.
proof::Misprint misprint_in_force(const Rules& rules);

/// Is a borderless set's safe area wide enough for that misprint? Once a set and edition; `scale`: at which its artwork
/// is printed. `where`: "letter, borderless".
void check_safe_area_of(const Rules& rules, const kit::Set& set, double scale, const std::string& where, Findings& findings);

/// What the simulation took off one borderless page (proof/misprint.h). `path`: the file inside the bundle.
void check_misprinted(const Rules& rules, const proof::Misprinted& seen, const std::string& path, int page, Findings& findings);

}  // namespace qw::checks
