// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "kit/manifest.h"

#include <string>
#include <vector>

namespace qw::release {

/// Files below a folder, with slashes. Folders whose names begin with a dot are passed over; the first 10 000 files, 16
/// folders deep.
std::vector<std::string> files_below(Disk& disk, const Path& folder);

/// Holds what lies in the kit's folder against what its manifest names.
void check_kit_folder(Disk& disk, const kit::Manifest& manifest, const checks::Rules& rules, Findings& findings);

}  // namespace qw::release
