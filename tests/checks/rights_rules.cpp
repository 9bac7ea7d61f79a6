// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/rights_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

kit::Manifest two_sets() {
    kit::Manifest manifest;
    for (const char* name : {"pages", "tags"}) {
        kit::Set set;
        set.name = name;
        set.mark = {"kit.yaml", 7, 3};
        manifest.sets.push_back(set);
    }
    return manifest;
}

const kit::Rights own{"the studio", "own work", std::nullopt};

Findings judged(const kit::Manifest& manifest, const std::vector<checks::FontSeen>& fonts = {}) {
    Findings findings;
    checks::check_rights(rules(), manifest, shared_data(), fonts, findings);
    return findings;
}

Findings embedded(unsigned bits) {
    Findings findings;
    checks::check_embedding(rules(), {{"Any-Regular", "", bits}}, findings);
    return findings;
}

}  // namespace

TEST_CASE("each set states its rights, or the kit states them for all") {
    kit::Manifest manifest = two_sets();
    CHECK(times(judged(manifest), "rights-of-artwork") == 2);
    CHECK(judged(manifest)[0].line == 7);
    manifest.sets[0].rights = own;
    REQUIRE(judged(manifest).size() == 1);
    CHECK(judged(manifest)[0].measured == "set tags: no rights");
    manifest.rights = own;
    CHECK(judged(manifest).empty());
    CHECK(manifest.rights_of(manifest.sets[1])->text() == "made by the studio; own work");
}

TEST_CASE("a font is one of the sheets' own or one that the manifest names") {
    kit::Manifest manifest = two_sets();
    manifest.rights = own;
    CHECK(judged(manifest, {{"Lato-Regular", "", 0}, {"Vollkorn-SemiBold", "", 0}}).empty());
    const std::vector<checks::FontSeen> foreign{{"Any-Regular", "art/pages.pdf", 0}};
    REQUIRE(times(judged(manifest, foreign), "rights-of-fonts") == 1);
    CHECK(judged(manifest, foreign)[0].file == "art/pages.pdf");
    manifest.fonts.emplace("Any-Regular", own);
    CHECK(judged(manifest, foreign).empty());
}

// OpenType specification, OS/2 table: fsType.
TEST_CASE("a font that its maker keeps from being embedded is told") {
    for (const unsigned allowed : {0x0000u, 0x0004u, 0x0008u, 0x0006u, 0x000au}) CHECK(embedded(allowed).empty());
    for (const unsigned hindered : {0x0002u, 0x0100u, 0x0104u, 0x0200u, 0x0208u}) CHECK(times(embedded(hindered), "font-embedding") == 1);
    CHECK(embedded(0x0102)[0].measured == "fsType 0x0102");
}
