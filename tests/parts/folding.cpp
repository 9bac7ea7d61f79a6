// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/folding.h"

#include "nets.h"

#include <catch2/catch.hpp>

namespace qw::parts::folding_tests {

TEST_CASE("the six nets fold without findings") {
    for (const nets::Draft& draft : nets::all()) {
        const nets::Built built = nets::build(draft);
        const Folded folded = fold(built.net);
        for (const Finding& f : folded.findings) UNSCOPED_INFO(f.rule << ": " << f.message << " | " << f.mend);
        INFO(draft.name);
        CHECK(folded.findings.empty());
        CHECK(folded.states.size() == built.net.folds.size() + 1);
    }
}

}  // namespace qw::parts::folding_tests
