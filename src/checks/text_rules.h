// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "kit/pipeline.h"

#include <string>

namespace qw::checks {

/// Whether the bytes of a text can be pasted anywhere: UTF-8, no control characters but line ends and tabs, some word in
/// it. False: nothing more can be said of it. `file` is its name in the findings.
bool check_text_bytes(const Rules& rules, const std::string& bytes, const std::string& file, Findings& findings);

/// What any text for buyers must not have: left-over placeholders, paths of a machine, addresses that shops forbid.
void check_text_left_over(const Rules& rules, const std::string& text, const std::string& file, Findings& findings);

/// What the shop allows of a text's length and of its title's ("# Title" or "Title: …" in its first line with words), and
/// what it has to say. `kit_title` is held to the title's limit too. No shop: nothing to say.
void check_shop_text(const Rules& rules, const kit::Shop* shop, const std::string& text, const std::string& kit_title, const std::string& file, Findings& findings);

}  // namespace qw::checks
