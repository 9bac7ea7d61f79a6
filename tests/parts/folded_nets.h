// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "nets.h"
#include "parts/folding.h"

#include <string>
#include <vector>

namespace qw::parts::folding_tests {

struct Made {
    nets::Built built;
    Folded folded;
};
Made made(const nets::Draft& draft);

std::vector<std::string> rules_of(const Findings& findings);
/// Whether folding the net finds that; what it finds is told when the check fails.
bool finds(const nets::Draft& draft, const std::string& rule);
/// Checks that every fold can be made and nothing is found.
void check_quiet(const nets::Draft& draft);

}  // namespace qw::parts::folding_tests
