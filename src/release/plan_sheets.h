// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/kit_sizes.h"
#include "release/plan.h"
#include "release/plan_parts.h"

namespace qw::release {

/// The generated sheets of every paper, and what the journal's own checks say of the prints at full size. A kit without
/// journal pages has none of them, and an error.
void plan_sheets(const ReadKit& kit, const SheetCounts& counts, const PartPlanner& parts, const checks::Rules& rules, const type::Fonts& fonts, Plan& plan);

}  // namespace qw::release
