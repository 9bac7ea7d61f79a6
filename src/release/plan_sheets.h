// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/kit_sizes.h"
#include "release/plan.h"

namespace qw::release {

/// The generated sheets of every paper: measurements, materials and tools, print check; and what the journal's own
/// checks say of the prints at full size.
void plan_sheets(const ReadKit& kit, const SheetCounts& counts, const type::Fonts& fonts, Plan& plan);

}  // namespace qw::release
