// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/make.h"

namespace qw::release {

/// A listing text as it stands in a shop, held against the kit that it sells and against what the shop allows. Throws
/// Fault (not_understood) for a file that is not there or is larger than 4 MiB; all else is a finding.
void audit_text(Disk& disk, const Path& text, const Prepared& prepared, Findings& findings);

}  // namespace qw::release
