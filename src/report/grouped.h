// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"

#include <string>
#include <vector>

namespace qw::report {

/// Findings that differ in their place only, so that forty pages with one fault are told once.
struct FindingGroup {
    Finding finding;                  ///< the first of them
    std::vector<std::string> places;  ///< "art/pages/05.png", "a4/bordered/extras.pdf, page 2"; may be empty
};

/// "a4/bordered/extras.pdf, page 2"; empty for a finding that names neither file nor page.
std::string place_of(const Finding& finding);

/// Worst level first, within a level in the order in which they were found.
std::vector<FindingGroup> grouped(const Findings& findings);

std::size_t count(const Findings& findings, Level level);
/// "1 error", "2 errors", "no errors".
std::string counted(std::size_t n, const std::string& one);

}  // namespace qw::report
