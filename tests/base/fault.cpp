// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/finding.h"

#include <catch2/catch.hpp>

using namespace qw;

TEST_CASE("a fault's text is made of its fields") {
    CHECK(to_text({"unknown-key", {"kit.yaml", 12, 5}, "unknown key 'sids'", "one of role or sides", "write 'sides'"}) ==
          "kit.yaml:12:5: unknown key 'sids'; expected one of role or sides; write 'sides'");
    CHECK(to_text({"x", {"kit.yaml", 12, 0}, "what", "", ""}) == "kit.yaml:12: what");
    CHECK(to_text({"x", {"kit.yaml", 0, 0}, "what", "", "mend"}) == "kit.yaml: what; mend");
    CHECK(to_text({"x", {}, "what", "", ""}) == "what");
}

TEST_CASE("a fault carries every note, and its text has a line for each") {
    const Fault fault(FaultKind::not_understood, std::vector<FaultNote>{{"a", {"f", 1, 1}, "one", "", ""}, {"b", {"f", 2, 1}, "two", "", ""}});
    CHECK(fault.kind() == FaultKind::not_understood);
    CHECK(fault.notes().size() == 2);
    CHECK(std::string(fault.what()) == "f:1:1: one\nf:2:1: two");
}

TEST_CASE("findings weigh what their level says") {
    CHECK(name_of(Level::note) == "note");
    CHECK(name_of(Level::warning) == "warning");
    CHECK(name_of(Level::error) == "error");
    Finding finding;
    finding.level = Level::warning;
    CHECK_FALSE(has_errors({finding}));
    CHECK_FALSE(has_errors({}));
    finding.level = Level::error;
    CHECK(has_errors({Finding{"x", Level::note, "", 0, 0, "", "", "", ""}, finding}));
}
