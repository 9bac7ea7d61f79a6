// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/finding.h"

#include <algorithm>

namespace qw {

std::string name_of(Level level) {
    switch (level) {
        case Level::note: return "note";
        case Level::warning: return "warning";
        case Level::error: break;
    }
    return "error";
}

bool has_errors(const Findings& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& f) { return f.level == Level::error; });
}

}  // namespace qw
