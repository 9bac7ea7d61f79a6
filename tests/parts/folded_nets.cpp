// SPDX-License-Identifier: GPL-3.0-or-later
#include "folded_nets.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::parts::folding_tests {

Made made(const nets::Draft& draft) {
    Made m{nets::build(draft), {}};
    m.folded = fold(m.built.net);
    return m;
}

std::vector<std::string> rules_of(const Findings& findings) {
    std::vector<std::string> rules;
    for (const Finding& finding : findings) rules.push_back(finding.rule);
    return rules;
}

bool finds(const nets::Draft& draft, const std::string& rule) {
    const Folded folded = made(draft).folded;
    for (const Finding& f : folded.findings) UNSCOPED_INFO(f.rule << ": " << f.message << " | " << f.mend);
    const std::vector<std::string> rules = rules_of(folded.findings);
    return std::count(rules.begin(), rules.end(), rule) > 0;
}

void check_quiet(const nets::Draft& draft) {
    const Folded folded = made(draft).folded;
    for (const Finding& f : folded.findings) UNSCOPED_INFO(f.rule << ": " << f.message << " | " << f.mend);
    CHECK(folded.findings.empty());
    CHECK(folded.states.size() == draft.folds.size() + 1);
}

}  // namespace qw::parts::folding_tests
