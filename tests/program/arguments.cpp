// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {
const std::string almanac = quoted((source_folder / "kits/tidewater-almanac").string());
}

TEST_CASE("arguments that are not understood end with 2 and, asked for, one JSON document", "[arguments]") {
    TestFolder folder;
    const std::vector<std::string> wrong = {"",
                                            "relase " + almanac,
                                            "release",
                                            "release " + almanac + " --jobs 0",
                                            "release " + almanac + " --colour",
                                            "release no-such-folder",
                                            "measure " + almanac + " --scale 29.9",
                                            "measure " + almanac + " --scale 103.1",
                                            "measure " + almanac + " --scale nan",
                                            "measure " + almanac + " --scale half",
                                            "measure " + almanac + " --paper a44",
                                            "measure " + almanac + " --print borderles",
                                            "measure " + almanac + " --printer most-home-printer",
                                            "audit no-such-thing",
                                            "rule",
                                            "rule no-such-rule",
                                            "begin"};
    for (const std::string& arguments : wrong) {
        INFO(arguments);
        CHECK(quirewright(arguments, folder.path()).status == 2);
        const Said said = quirewright(arguments + " --json", folder.path());
        CHECK(said.status == 2);
        const nlohmann::json json = nlohmann::json::parse(said.text, nullptr, false);
        REQUIRE_FALSE(json.is_discarded());
        REQUIRE(json["faults"].size() == 1);
        for (const char* key : {"code", "file", "line", "column", "what", "expected", "mend"}) CHECK(json["faults"][0].contains(key));
    }
}

TEST_CASE("a misspelt name is answered with the nearest one", "[arguments]") {
    TestFolder folder;
    const auto mend = [&](const std::string& arguments) { return quirewright_json(arguments + " --json", folder.path())["faults"][0]["mend"].get<std::string>(); };
    CHECK(mend("measure " + almanac + " --paper a44").find("'a4'") != std::string::npos);
    CHECK(mend("measure " + almanac + " --printer most-home-printer").find("'most-home-printers'") != std::string::npos);
    CHECK(mend("rule artwork-pi").find("'artwork-ppi'") != std::string::npos);
}

TEST_CASE("help goes to standard output and ends with 0", "[arguments]") {
    TestFolder folder;
    for (const std::string arguments : {"--help", "release --help", "measure --help", "audit --help", "begin --help", "rule --help", "--version"}) {
        const Said said = quirewright(arguments, folder.path());
        CHECK(said.status == 0);
        CHECK_FALSE(said.text.empty());
    }
}

TEST_CASE("every rule is told", "[arguments]") {
    TestFolder folder;
    const nlohmann::json all = quirewright_json("rule --all --json", folder.path());
    CHECK(all.size() >= 25);
    for (const auto& rule : all) {
        for (const char* key : {"checks", "why", "source"}) CHECK_FALSE(rule[key].get<std::string>().empty());
        const nlohmann::json one = quirewright_json("rule " + rule["rule"].get<std::string>() + " --json", folder.path());
        CHECK(one == rule);
    }
}

TEST_CASE("rules of journal templates are told with every journal that has them", "[arguments]") {
    TestFolder folder;
    const nlohmann::json covers = quirewright_json("rule journal-cover-paper-fits-sheet --json", folder.path());
    CHECK(covers["journals"].size() == 3);  // of the five journals, those that cover boards with printed sheets
    for (const auto& one : covers["journals"]) CHECK(one["holds"].get<std::string>().find("cover_sheet_width") != std::string::npos);
    CHECK(quirewright_json("rule journal-stations-on-page --json", folder.path())["level"] == "error");
    CHECK(quirewright_json("rule full-sheets-enough --json", folder.path())["level"] == "note");
}

TEST_CASE("measure tells how many full sheets are needed", "[arguments]") {
    TestFolder folder;
    const nlohmann::json json = quirewright_json("measure " + almanac + " --json", folder.path());
    CHECK(json["full_sheets"]["in_kit"] == 5);
    const int needed = json["full_sheets"]["needed"];
    CHECK(needed == 3);  // two cover papers, and one sheet for both liners
    CHECK(quirewright("measure " + almanac, folder.path()).text.find("full sheets needed: 3 (kit has 5)") != std::string::npos);
}

TEST_CASE("measure gives the common soft-spine journal", "[arguments]") {
    // Common practice, no source.
    TestFolder folder;
    const auto shown = [&](const std::string& arguments, const std::string& name, const std::string& system) {
        const nlohmann::json measured = quirewright_json("measure " + almanac + " " + arguments + " --json", folder.path());
        for (const auto& piece : measured["pieces"])
            if (piece["name"] == name) return std::to_string(piece["count"].get<int>()) + " of " + piece["shown"][system].get<std::string>();
        return std::string();
    };
    CHECK(shown("--paper a4", "board", "metric") == "2 of 153 x 216 mm");
    CHECK(shown("--paper a4", "spine", "metric") == "1 of 15 x 216 mm");
    CHECK(shown("--paper a4", "liner", "metric") == "2 of 147 x 210 mm");
    CHECK(shown("--paper letter", "board", "us") == "2 of 5 5/8 x 8 3/4 in");
    CHECK(shown("--paper letter", "spine", "us") == "1 of 5/8 x 8 3/4 in");
    CHECK(shown("--paper letter", "liner", "us") == "2 of 5 3/8 x 8 1/2 in");
    const nlohmann::json a4 = quirewright_json("measure " + almanac + " --paper a4 --print bordered --scale 50 --json", folder.path());
    // (297 - 25.4) / 297 of the generic PostScript PPD's margins 18/36 pt, times 50 %.
    CHECK(a4["scale"].get<double>() == Approx(0.9145 / 2).margin(0.0001));
    CHECK(a4["paper"] == "iso_a4_210x297mm");
    CHECK(quirewright_json("measure " + almanac + " --paper a4 --print borderless --json", folder.path())["stations_mm"]["spine"] ==
          nlohmann::json({40.0, 108.0, 176.0}));
}
