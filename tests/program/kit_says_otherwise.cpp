// SPDX-License-Identifier: GPL-3.0-or-later
// What a kit sets for its journal reaches the numbers, the lists and the cautions that buyers see.
#include "program/program.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::test;

namespace {

/// A copy of the larger demo kit with more lines at the end of its manifest's head.
Path kit_with(const std::string& lines) {
    const Path folder = Path(QW_RELEASED).parent_path() / "otherwise";
    std::filesystem::remove_all(folder);
    const Path kit = copy_of_kit("tidewater-almanac", folder);
    replace_in(kit / "kit.yaml", "borders: trimmed\n", "borders: trimmed\n" + lines);
    return kit;
}

nlohmann::json measured(const Path& kit, const std::string& options = "") { return quirewright_json("measure " + quoted(kit.string()) + " --json " + options); }

nlohmann::json named(const nlohmann::json& list, const std::string& name) {
    for (const auto& one : list)
        if (one["name"] == name) return one;
    return nullptr;
}

const nlohmann::json* rule(const nlohmann::json& list, const std::string& name) {
    for (const auto& one : list)
        if (one["rule"] == name) return &one;
    return nullptr;
}

}  // namespace

TEST_CASE("a kit without the closing band has none, and no caution for it is lost that elastic still asks for", "[otherwise]") {
    const Path kit = kit_with("choices: { closing-band: none }\n");
    const auto lengths = measured(kit)["lengths"];
    CHECK(named(lengths, "closing-band").is_null());
    CHECK_FALSE(named(lengths, "sewing-elastic").is_null());
}

TEST_CASE("a choice that the journal does not offer is told with its line", "[otherwise]") {
    const Path kit = kit_with("choices: { closing-band: ribbons }\n");
    const Said said = quirewright("measure " + quoted(kit.string()) + " --json");
    CHECK(said.status == 2);
    const auto fault = nlohmann::json::parse(said.text)["faults"][0];
    CHECK(fault["file"] == "kit.yaml");
    CHECK(fault["line"].get<int>() > 1);
}

TEST_CASE("a kit's own caliper changes the thickness of its pages", "[otherwise]") {
    const double before = measured(kit_with(""))["bulk_mm"];
    const double after = measured(kit_with("calipers: { copy-100: 0.2 mm }\n"))["bulk_mm"];
    CHECK(before == Approx(24 * 0.125));  // 12 sheets are 24 leaves; 100 g/m2 at 1.25 cm3/g (ISO 534)
    CHECK(after == Approx(24 * 0.2));
}

TEST_CASE("what is glued in fills the spine", "[otherwise]") {
    const Path kit = kit_with("");
    // The kit's own six pockets leave no room for more.
    replace_in(kit / "kit.yaml", "    glued-in: 6\n", "");
    const int before = named(measured(kit)["figures"], "pockets-room")["number"];
    CHECK(named(measured(kit_with(""))["figures"], "pockets-room")["number"] < before);
    replace_in(kit / "kit.yaml", "role: extra\n", "role: extra\n    glued-in: 2\n    filled: 3 mm\n");
    const int after = named(measured(kit)["figures"], "pockets-room")["number"];
    CHECK(after < before);
}

TEST_CASE("a journal's own check takes the level that the kit gives it, and its reason is asked for", "[otherwise]") {
    const std::string thick = "calipers: { copy-100: 0.6 mm }\n";  // fills more than the spine is wide
    const nlohmann::json usual = measured(kit_with(thick));
    REQUIRE(rule(usual["findings"], "journal-spine-fill"));
    CHECK((*rule(usual["findings"], "journal-spine-fill"))["level"] == "warning");
    const Path strict = kit_with(thick + "rules: { journal-spine-fill: { level: error, reason: our buyers close it with a band } }\n");
    const Said said = quirewright("measure " + quoted(strict.string()) + " --json");
    CHECK(said.status == 1);
    const nlohmann::json raised = nlohmann::json::parse(said.text)["findings"];
    REQUIRE(rule(raised, "journal-spine-fill"));
    CHECK((*rule(raised, "journal-spine-fill"))["level"] == "error");
    CHECK_FALSE(rule(measured(kit_with(thick + "rules: { journal-spine-fill: { level: off, reason: it may gape } }\n"))["findings"], "journal-spine-fill"));
    CHECK(quirewright("measure " + quoted(kit_with("rules: { journal-spine-fill: { level: note } }\n").string())).status == 2);
}

TEST_CASE("a kit without journal pages is unfit, and says so", "[otherwise]") {
    const Path folder = Path(QW_RELEASED).parent_path() / "otherwise";
    std::filesystem::remove_all(folder);
    const Path kit = copy_of_kit("lamplight-mini", folder);
    replace_in(kit / "kit.yaml", "role: journal-page", "role: extra");
    replace_in(kit / "kit.yaml", "sides: duplex", "sides: single");
    const Said said = quirewright("audit " + quoted(kit.string()) + " --json");
    CHECK(said.status == 1);
    const nlohmann::json findings = nlohmann::json::parse(said.text)["findings"];
    CHECK(rule(findings, "no-journal-pages"));
}

TEST_CASE("what a finding of a journal names can be looked up", "[otherwise]") {
    const Path kit = kit_with("calipers: { copy-100: 0.6 mm }\n");
    replace_in(kit / "kit.yaml", "files: art/covers/*.jpg", "files: art/covers/cover-1.jpg");
    const auto findings = measured(kit)["findings"];
    CHECK(rule(findings, "journal-spine-fill"));
    REQUIRE(rule(findings, "full-sheets-enough"));
    CHECK((*rule(findings, "full-sheets-enough"))["mend"] == "Print it 3 times.");
    const std::string text = quirewright("measure " + quoted(kit.string())).text;
    CHECK(text.find("full sheets needed: 3 (kit has 1)") != std::string::npos);
    for (const auto& finding : findings) {
        const std::string name = finding["rule"];
        INFO(name);
        CHECK(text.find(finding["level"].get<std::string>() + "  " + name + "\n") != std::string::npos);
        CHECK(quirewright_json("rule " + name + " --json")["rule"] == name);
    }
    // A kit may think otherwise of it, as of any rule.
    replace_in(kit / "kit.yaml", "borders: trimmed\n", "borders: trimmed\nrules: { full-sheets-enough: { level: \"off\", reason: one picture on purpose } }\n");
    CHECK_FALSE(rule(measured(kit)["findings"], "full-sheets-enough"));
}
