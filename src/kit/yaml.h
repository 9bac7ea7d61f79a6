// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/node.h"

#include <string>

namespace qw::kit {

/// How much of YAML a file may use up, so that no file can take the machine down. Ours need a tenth of it.
struct YamlLimits {
    std::size_t depth = 24;
    std::size_t values = 20'000;
};

/// Reads one YAML document whose root is a map, the only place where the YAML library is used. What is well formed but
/// not allowed here (a key that stands twice, an anchor, alias, tag or merge key, a key that is no text, a second
/// document) is added to `faults` and the reading goes on. Aliases are never followed, so nothing can swell.
/// Throws Fault (not_understood) for bytes that are no text, an empty file, what is not well formed ("syntax", alone,
/// with its line; "unquoted-star" for a pattern that begins with an unquoted `*`) and what exceeds the limits.
/// `bytes` are those of the file, with or without a byte-order mark; `file` stands in the marks.
Node read_yaml(std::string bytes, const std::string& file, Faults& faults, const YamlLimits& limits = {});

}  // namespace qw::kit
