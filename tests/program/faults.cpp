// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

struct Refused {
    int status;
    nlohmann::json faults;
};

Refused refused(const Path& kit, const Path& folder) {
    const Said said = quirewright("release " + quoted(kit.string()) + " --out out --json", folder);
    return {said.status, nlohmann::json::parse(said.text)["faults"]};
}

}  // namespace

TEST_CASE("a refused manifest tells all its faults with file and line, and publishes nothing", "[faults]") {
    TestFolder folder;
    const Path kit = copy_of_kit("lamplight-mini", folder.path());
    replace_in(kit / "kit.yaml", "papers:", "pappers:");
    const std::string yaml = read(kit / "kit.yaml");
    write(kit / "kit.yaml", yaml + "  broken:\n    role: ful-sheet\n    files: ../outside.png\n    bleed: 3\n    stock: copy-80\n");
    const Refused answer = refused(kit, folder.path());
    CHECK(answer.status == 2);
    CHECK(answer.faults.size() >= 4);
    for (const auto& fault : answer.faults) {
        CHECK(fault["file"] == "kit.yaml");
        CHECK(fault["line"].get<int>() > 0);
    }
    CHECK_FALSE(std::filesystem::exists(folder / "out/lamplight-mini/1.0.0"));
}

TEST_CASE("a syntax error is told alone with its line", "[faults]") {
    TestFolder folder;
    const Path kit = copy_of_kit("lamplight-mini", folder.path());
    write(kit / "kit.yaml", "kit: lamplight-mini\ntitle: [unclosed\nversion: 1.0.0\n");
    const Refused answer = refused(kit, folder.path());
    CHECK(answer.status == 2);
    REQUIRE(answer.faults.size() == 1);
    CHECK(answer.faults[0]["line"].get<int>() >= 2);
}

TEST_CASE("damaged artwork is a finding: exit 1, nothing published, the report tells the file", "[faults]") {
    TestFolder folder;
    const Path kit = copy_of_kit("tidewater-almanac", folder.path());
    const std::string cover = read(kit / "art/covers/cover-1.jpg");
    write(kit / "art/covers/cover-1.jpg", cover.substr(0, cover.size() / 2));
    const std::string page = read(kit / "art/pages/05.png");
    write(kit / "art/pages/05.png", page.substr(0, page.size() - 20));
    const Said said = quirewright("release " + quoted(kit.string()) + " --out out --json", folder.path());
    CHECK(said.status == 1);
    const nlohmann::json report = nlohmann::json::parse(said.text);
    CHECK(report["fit_for_sale"] == false);
    std::set<std::string> files;
    for (const auto& finding : report["findings"])
        if (finding["rule"] == "artwork-damaged") files.insert(finding["where"]["file"].get<std::string>());
    CHECK(files == std::set<std::string>{"art/covers/cover-1.jpg", "art/pages/05.png"});
    CHECK_FALSE(std::filesystem::exists(folder / "out/tidewater-almanac/1.0.0"));
    CHECK(std::filesystem::exists(folder / "out/tidewater-almanac/last-audit.html"));
    CHECK(std::filesystem::exists(folder / "out/tidewater-almanac/last-audit.json"));
}

TEST_CASE("geometry that would spoil a print is an error before anything is drawn for sale", "[faults]") {
    TestFolder folder;
    const auto rules_of = [&](const std::string& from, const std::string& to) {
        std::filesystem::remove_all(folder / "kit");
        REQUIRE(quirewright("begin kit", folder.path()).status == 0);
        replace_in(folder / "kit/kit.yaml", from, to);
        const Said said = quirewright("release kit --out out --json", folder.path());
        INFO(said.text);
        const nlohmann::json report = nlohmann::json::parse(said.text);
        std::set<std::string> rules;
        for (const auto& finding : report["findings"])
            if (finding["level"] == "error") rules.insert(finding["rule"].get<std::string>());
        CHECK(said.status == (rules.empty() ? 0 : 1));
        return rules;
    };
    // Drawn smaller than the paper: white edges.
    CHECK(rules_of("drawn-at: 303 x 221.9 mm", "drawn-at: 280 x 205 mm").count("artwork-covers-paper") == 1);
    // Drawn so large that 100 pixels are left for an inch.
    CHECK(rules_of("drawn-at: 303 x 221.9 mm", "drawn-at: 900 x 659.2 mm").count("artwork-ppi-low") == 1);
}

TEST_CASE("an odd number of faces needs a last back", "[faults]") {
    TestFolder folder;
    REQUIRE(quirewright("begin kit", folder.path()).status == 0);
    std::filesystem::remove(folder / "kit/art/pages/4.png");
    const Said said = quirewright("release kit --out out --json", folder.path());
    CHECK(said.status == 1);
    const nlohmann::json report = nlohmann::json::parse(said.text);
    bool told = false;
    for (const auto& finding : report["findings"]) told = told || (finding["rule"] == "odd-faces" && finding["where"]["line"].get<int>() > 0);
    CHECK(told);
    replace_in(folder / "kit/kit.yaml", "sides: duplex", "sides: duplex\n    last-back: blank");
    CHECK(quirewright("release kit --out out", folder.path()).status == 0);
    const Said pages = run("pdfinfo out/kit/1.0.0/a4/borderless/journal-pages.pdf | sed -n 's/^Pages: *//p'", folder.path());
    CHECK(std::stoi(pages.text) == 4);
}
