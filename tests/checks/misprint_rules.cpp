// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/misprint_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

Findings of_safe_area(Length safe_area, double scale = 1) {
    kit::Set set;
    set.name = "journal-pages";
    set.safe_area = safe_area;
    Findings findings;
    checks::check_safe_area_of(rules(), set, scale, "letter, borderless", findings);
    return findings;
}

}  // namespace

TEST_CASE("the misprint's limits are data, and inside a safe area of 6 mm") {
    const proof::Misprint misprint = checks::misprint_in_force(rules());
    CHECK(misprint.enlarged == 2.75_mm);
    CHECK(misprint.shifted == 3_mm);
    CHECK(misprint.farthest() == 5.75_mm);
    CHECK(kit::Set().safe_area == 6_mm);
}

TEST_CASE("a safe area that the misprint reaches is told with both lengths") {
    CHECK(of_safe_area(6_mm).empty());
    CHECK(of_safe_area(5.75_mm).empty());
    const Findings findings = of_safe_area(5.7_mm);
    REQUIRE(times(findings, "misprint-safe-area") == 1);
    CHECK(findings[0].level == Level::warning);
    CHECK(findings[0].measured == "5.7 mm");
    CHECK(findings[0].limit == "2.75 mm + 3 mm = 5.75 mm");
    CHECK(times(of_safe_area(6_mm, 0.94), "misprint-safe-area") == 1);  // 5.64 mm as printed
}

TEST_CASE("ink of the safe area that leaves the sheet is told, other ink is not") {
    Findings findings;
    proof::Misprinted seen;
    seen.lost = 0.05;
    checks::check_misprinted(rules(), seen, "letter/borderless/journal-pages.pdf", 3, findings);
    CHECK(findings.empty());
    seen.lost_safe = 0.004;
    seen.deepest = 5.5_mm;
    checks::check_misprinted(rules(), seen, "letter/borderless/journal-pages.pdf", 3, findings);
    REQUIRE(times(findings, "misprint-shift") == 1);
    CHECK(findings[0].page == 3);
    CHECK(findings[0].level == Level::note);
    CHECK(findings[0].measured == "0.4 % of the safe area's ink, up to 5.5 mm from the edge");
}
