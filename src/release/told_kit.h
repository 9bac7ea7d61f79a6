// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/claim_rules.h"
#include "release/make.h"

namespace qw::release {

/// What a text may say of the kit: every number of the model under the names that people have for it, in every paper and
/// print of the kit at full size.
checks::KitTold told_kit(const Prepared& prepared);

}  // namespace qw::release
