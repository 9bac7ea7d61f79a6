// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/rules.h"

#include "base/fault.h"
#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("a finding gets the level that is in force") {
    Findings findings;
    const checks::Rules plain(shared_data().checks, {});
    Finding finding;
    finding.rule = "artwork-ppi-low";
    plain.say(findings, finding);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].level == Level::error);

    const checks::Rules milder(shared_data().checks, {{"artwork-ppi-low", {}, std::nullopt, "note", "drawn as a poster"}});
    milder.say(findings, finding);
    CHECK(findings[1].level == Level::note);

    const checks::Rules off(shared_data().checks, {{"artwork-ppi-low", {}, std::nullopt, "off", "drawn as a poster"}});
    off.say(findings, finding);
    CHECK(findings.size() == 2);
}

TEST_CASE("an overridden limit holds, and its reason is told with what was tried") {
    const checks::Rules rules(shared_data().checks, {{"artwork-ppi", {}, 100, std::nullopt, "soft watercolours"}});
    CHECK(rules.limit("artwork-ppi") == 100);
    rules.tried("artwork-ppi", 3);
    rules.tried("artwork-ppi");
    rules.tried("odd-faces");
    const auto tried = rules.what_was_tried();
    REQUIRE(tried.size() == 2);
    CHECK(tried[0].rule == "artwork-ppi");
    CHECK(tried[0].times == 4);
    CHECK(tried[0].reason == "soft watercolours");
    CHECK(tried[1].reason.empty());
}

TEST_CASE("an override of a rule that is not there is refused with the nearest one") {
    try {
        checks::Rules(shared_data().checks, {{"artwork-pppi", {"kit.yaml", 12, 3}, 1, std::nullopt, "x"}});
        FAIL("accepted");
    } catch (const Fault& fault) {
        CHECK(fault.notes()[0].where.line == 12);
        CHECK(fault.notes()[0].mend.find("artwork-ppi") != std::string::npos);
    }
    const checks::Rules rules(shared_data().checks, {});
    CHECK_THROWS_AS(rules.limit("odd-faces"), Fault);
    CHECK_THROWS_AS(rules.tried("no-such-rule"), Fault);
}

TEST_CASE("an override of a check of the journal's template is none of these rules, and changes none") {
    const checks::Rules rules(shared_data().checks, {{"journal-spine-fill", {"kit.yaml", 12, 3}, std::nullopt, "note", "pressed flat"},
                                                     {"journal-check", {"kit.yaml", 13, 3}, std::nullopt, "off", "a rule of the shared ones"}});
    CHECK_THROWS_AS(rules.tried("journal-spine-fill"), Fault);
    CHECK(rules.limit("artwork-ppi") == checks::Rules(shared_data().checks, {}).limit("artwork-ppi"));
    rules.tried("journal-check");
    REQUIRE(rules.what_was_tried().size() == 1);
    CHECK(rules.what_was_tried()[0].reason == "a rule of the shared ones");
}
