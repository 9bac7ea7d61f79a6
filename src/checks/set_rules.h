// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"

#include <string>
#include <vector>

namespace qw::checks {

/// The files of one set, or of one face of a set of parts, as the manifest's patterns found them.
struct FilesOfSet {
    std::string set, face;            ///< face: of a part's template, else empty
    std::vector<std::string> files;   ///< relative to the kit
};

/// What the names of a kit's artwork tell: a number that is missing between others, a file that two sets show.
void check_sets(const Rules& rules, const std::vector<FilesOfSet>& sets, Findings& findings);

}  // namespace qw::checks
