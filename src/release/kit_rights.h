// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "release/look.h"
#include "release/read.h"
#include "type/fonts.h"

namespace qw::release {

/// What the kit and the pipeline state of the rights in artwork and fonts, and what the fonts' own files say.
void check_kit_rights(const ReadKit& kit, const std::vector<LookedSet>& looked, const type::Fonts& fonts, const checks::Rules& rules, Findings& findings);

}  // namespace qw::release
