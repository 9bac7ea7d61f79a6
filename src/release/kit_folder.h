// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "kit/manifest.h"

namespace qw::release {

/// Holds what lies in the kit's folder against what its manifest names. Folders whose names begin with a dot are passed
/// over; the first 10 000 files, 16 folders deep.
void check_kit_folder(Disk& disk, const kit::Manifest& manifest, const checks::Rules& rules, Findings& findings);

}  // namespace qw::release
