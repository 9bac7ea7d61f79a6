// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace qw::kit {

/// Whether a name is matched by a pattern: `*` is any characters, `?` is one character (of UTF-8, not one byte), all
/// else is itself, capitals and small letters apart. A name that begins with a dot is hidden: only a pattern that
/// begins with a dot matches it. Takes time in proportion to both lengths multiplied, at most.
bool glob_matches(std::string_view pattern, std::string_view name);

/// Whether a text holds `*` or `?`.
bool has_wildcards(std::string_view text);

}  // namespace qw::kit
