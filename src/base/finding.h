// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace qw {

enum class Level { note, warning, error };
std::string name_of(Level level);

/// One thing that the checks have to say. Plain text; numbers carry their unit.
struct Finding {
    std::string rule;      ///< kebab-case, as `quirewright rule NAME` knows it
    Level level = Level::error;
    std::string file;      ///< path relative to the kit, the release or the bundle; may be empty
    int page = 0;          ///< counted from 1; 0: the whole file
    int line = 0;          ///< counted from 1; 0: no line
    std::string measured;  ///< what was found, with unit
    std::string limit;     ///< what it is held against, with unit
    std::string message;   ///< one sentence
    std::string mend;      ///< what to do
};
using Findings = std::vector<Finding>;

bool has_errors(const Findings& findings);

}  // namespace qw
