// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace qw::report {

/// One sheet of the proofing set: what is printed, and what it shows.
struct ProofingSheet {
    std::string file;                 ///< path inside the bundle
    std::vector<int> pages;           ///< of that file, counted from 1
    std::vector<std::string> shows;   ///< risks, by name and what they are about
};

/// The sheets that were chosen, and every risk that they show together.
struct ProofingSet {
    std::vector<ProofingSheet> sheets;
    std::vector<std::string> risks;
};

}  // namespace qw::report
