// SPDX-License-Identifier: GPL-3.0-or-later
// Parts in the hands of the whole program: what goes in what, what lies on what, and what does not fit the paper.
#include "program/program.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace qw;
using namespace qw::test;

namespace {

const Path parts_folder = Path(QW_RELEASED).parent_path() / "parts";

Path fresh_copy() {
    std::filesystem::remove_all(parts_folder / "tidewater-almanac");
    return copy_of_kit("tidewater-almanac", parts_folder);
}

/// A copy of the larger demo kit with something of its parts written otherwise.
Path kit_where(const std::string& from, const std::string& to) {
    const Path kit = fresh_copy();
    replace_in(kit / "kit.yaml", from, to);
    return kit;
}

/// Two pages and one pocket of the demo kit: what has to be drawn to see whether a part fits.
Path one_pocket() {
    const Path kit = fresh_copy();
    write(kit / "kit.yaml",
          "kit: one-pocket\ntitle: One Pocket\nversion: 1.0.0\njournal: wrapped-booklet\npapers: [letter, a4]\nprints: [borderless, bordered]\nsets:\n"
          "  pages: { role: journal-page, files: [art/pages/01.png, art/pages/02.png], drawn-at: 303 x 221.9 mm }\n"
          "  pockets: { role: part, part: trifold-pocket, faces: { outside: art/pockets/1.png }, stock: card-160, goes-on: page }\n");
    return kit;
}

/// `measure` finds a kit unfit with status 1; its document is there all the same.
nlohmann::json measure_of(const Path& kit, const std::string& options) {
    return nlohmann::json::parse(quirewright("measure " + quoted(kit.string()) + " --json " + options).text);
}

std::vector<nlohmann::json> findings_of(const nlohmann::json& document, const std::string& rule) {
    std::vector<nlohmann::json> all;
    for (const auto& finding : document["findings"])
        if (finding["rule"] == rule) all.push_back(finding);
    return all;
}

const nlohmann::json& part_of(const nlohmann::json& document, const std::string& set) {
    const auto found = std::find_if(document["parts"].begin(), document["parts"].end(), [&](const nlohmann::json& part) { return part["set"] == set; });
    REQUIRE(found != document["parts"].end());
    return *found;
}

}  // namespace

TEST_CASE("parts are printed at the scale of their edition, sizes and all", "[parts]") {
    const Path kit = fresh_copy();
    // 190.5 x 266.7 mm is what 12.7 and 6.35 mm of margin leave of letter; 254 / 279.4 of its length (PPD margins of 18 and 36 pt).
    for (const auto& [options, scale] : {std::pair<std::string, double>{"--paper letter --print borderless", 1.0},
                                         {"--paper letter --print bordered", 254.0 / 279.4},
                                         {"--paper a4 --print bordered", 271.6 / 297.0},
                                         {"--paper a4 --print borderless --scale 50", 0.5}}) {
        CAPTURE(options);
        const nlohmann::json document = measure_of(kit, options);
        const bool us = document["paper"] == "na_letter_8.5x11in";
        const nlohmann::json& pockets = part_of(document, "pockets");
        CHECK(pockets["count"] == 6);
        CHECK(pockets["scale"].get<double>() == Approx(scale).margin(1e-4));
        const double width = (us ? 3.3125 * 25.4 : 84) * scale;  // native in both: 3 5/16 in, 84 mm
        CHECK(pockets["folded"]["width_mm"].get<double>() == Approx(width).margin(0.01));
        CHECK(part_of(document, "tags")["count"] == 6);
        CHECK(part_of(document, "envelopes")["count"] == 2);
        CHECK(findings_of(document, "part-goes-in").empty());
    }
}

TEST_CASE("a bought card that does not go in is told with what is missing and the print that takes it", "[parts]") {
    // 3 x 5 in (na_index-3x5, PWG 5101.1) and 2 mm of clearance in 84 mm: (76.2 + 2) / 84 = 93.1 %, told as 94 %.
    const Path kit = kit_where("    goes-on: page\n", "    goes-on: page\n    holds: [index-card-3x5]\n");
    CHECK(findings_of(measure_of(kit, "--paper a4 --print borderless"), "part-goes-in").empty());
    const auto small = findings_of(measure_of(kit, "--paper a4 --print bordered"), "part-goes-in");
    REQUIRE(small.size() >= 1);
    CHECK(small[0]["level"] == "error");
    CHECK_THAT(small[0]["mend"].get<std::string>(), Catch::Contains("94 %"));
}

TEST_CASE("the smallest scale is that of the arithmetic, at every scale between", "[parts]") {
    const Path kit = kit_where("    goes-on: page\n", "    goes-on: page\n    holds: [index-card-3x5]\n");
    for (const int percent : {92, 93, 94, 95, 103}) {
        CAPTURE(percent);
        const bool fits = 84 * percent / 100.0 >= 76.2 + 2 && 82.5 * percent / 100.0 >= 76.2 + 2;  // the inner pocket is 1.5 mm narrower
        CHECK(findings_of(measure_of(kit, "--paper a4 --print borderless --scale " + std::to_string(percent)), "part-goes-in").empty() == fits);
    }
}

TEST_CASE("what goes in a set must be a set of parts, and its pocket one of the template's", "[parts]") {
    const Said wrong = quirewright("measure " + quoted(kit_where("goes-in: pockets/middle", "goes-in: pockets/left").string()) + " --json");
    CHECK(wrong.status == 2);
    CHECK_THAT(wrong.text, Catch::Contains("left"));
    const Said nobody = quirewright("measure " + quoted(kit_where("goes-in: pockets/middle", "goes-in: pages").string()) + " --json");
    CHECK(nobody.status == 2);
}

TEST_CASE("a part that is larger than the page that it is glued to is told in every edition", "[parts]") {
    // An A4 page is 148.5 mm wide and the closed pocket 120 mm high: a template that is twice as high does not lie on it.
    const Path pipeline = parts_folder / "tall";
    std::filesystem::remove_all(pipeline);
    std::filesystem::create_directories(parts_folder);
    std::filesystem::copy(source_folder / "pipeline", pipeline, std::filesystem::copy_options::recursive);
    replace_in(pipeline / "parts" / "trifold-pocket.yaml", "height: { metric: 120 mm, us: 4 3/4 in,", "height: { metric: 240 mm, us: 9 1/2 in,");
    const Path kit = one_pocket();
    const std::string other = " --pipeline " + quoted(pipeline.string());
    const auto found = findings_of(measure_of(kit, "--paper a4 --print borderless" + other), "part-goes-on");
    REQUIRE(found.size() == 1);
    CHECK_THAT(found[0]["message"].get<std::string>(), Catch::Contains("pockets"));

    // And the net, 304 mm high with its strip, does not fit the paper: told by a release, which then publishes nothing.
    const Path out = parts_folder / "tall-dist";
    std::filesystem::remove_all(out);
    const Said release = quirewright("release " + quoted(kit.string()) + " --json --out " + quoted(out.string()) + other);
    CHECK(release.status == 1);
    const auto lacking = findings_of(nlohmann::json::parse(release.text), "part-fits-paper");
    REQUIRE(lacking.size() == 4);  // two papers, two prints
    for (const auto& finding : lacking) {
        CHECK_THAT(finding["measured"].get<std::string>(), Catch::Contains("missing"));
        CHECK_THAT(finding["mend"].get<std::string>(), Catch::Matches("Print it at [0-9]+ % .*"));
    }
    CHECK_FALSE(std::filesystem::exists(out / "one-pocket" / "1.0.0"));
}

TEST_CASE("three panels as wide as each other fill a sheet of A4 and fit none with a border", "[parts]") {
    // 99.5 + 99.5 + 98 mm is what a sheet of A4, 297 mm long, is folded in three from (letter leaflets, common practice);
    // with its tabs and bleed it is longer than the paper.
    const Path pipeline = parts_folder / "long";
    std::filesystem::remove_all(pipeline);
    std::filesystem::create_directories(parts_folder);
    std::filesystem::copy(source_folder / "pipeline", pipeline, std::filesystem::copy_options::recursive);
    replace_in(pipeline / "parts" / "trifold-pocket.yaml", "width: { metric: 84 mm, us: 3 5/16 in,", "width: { metric: 99.5 mm, us: 3 11/16 in,");
    const Path kit = one_pocket();
    const Said release = quirewright("release " + quoted(kit.string()) + " --json --out " + quoted((parts_folder / "dist").string()) +
                                     " --pipeline " + quoted(pipeline.string()));
    CHECK(release.status == 1);
    const auto lacking = findings_of(nlohmann::json::parse(release.text), "part-fits-paper");
    const auto bordered = std::count_if(lacking.begin(), lacking.end(),
                                        [](const nlohmann::json& f) { return f["limit"].get<std::string>().find("bordered") != std::string::npos; });
    CHECK(bordered == 2);
}

TEST_CASE("a face with fewer pages in its PDF than there are parts is told when the PDF has been looked at", "[parts]") {
    const Path kit = one_pocket();
    std::filesystem::copy_file(source_folder / "kits" / "lamplight-mini" / "art" / "pages.pdf", kit / "art" / "fronts.pdf");  // 8 pages
    replace_in(kit / "kit.yaml", "faces: { outside: art/pockets/1.png }", "faces: { outside: art/fronts.pdf, inside: [art/pockets/1.png, art/pockets/2.png] }");
    const std::string release = "release " + quoted(kit.string()) + " --json --out " + quoted((parts_folder / "dist").string());
    const auto told = findings_of(nlohmann::json::parse(quirewright(release).text), "part-face-count");
    REQUIRE(told.size() == 1);
    CHECK_THAT(told[0]["message"].get<std::string>(), Catch::Contains("'inside'"));
    CHECK(told[0]["measured"] == "2 pictures");
    replace_in(kit / "kit.yaml", "stock: card-160", "last-back: blank, stock: card-160");
    CHECK(findings_of(nlohmann::json::parse(quirewright(release).text), "part-face-count").empty());
}
