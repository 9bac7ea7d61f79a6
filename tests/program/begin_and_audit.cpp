// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("a starter kit releases as it stands", "[begin]") {
    TestFolder folder;
    CHECK(quirewright("begin 'My First Kit'", folder.path()).status == 0);
    CHECK(quirewright("release 'My First Kit'", folder.path()).status == 0);
    CHECK(std::filesystem::exists(folder / "dist/my-first-kit"));
    // Never over something that is there.
    CHECK(quirewright("begin 'My First Kit'", folder.path()).status == 2);
    write(folder / "full/note.txt", "mine");
    CHECK(quirewright("begin full", folder.path()).status == 2);
    CHECK(read(folder / "full/note.txt") == "mine");
    std::filesystem::create_directories(folder / "empty");
    CHECK(quirewright("begin empty", folder.path()).status == 0);
}

TEST_CASE("an audit of a kit writes nothing but the file that is named", "[audit]") {
    TestFolder folder;
    REQUIRE(quirewright("begin kit", folder.path()).status == 0);
    const auto before = digests_below(folder / "kit");
    const Said said = quirewright("audit kit --json --html report.html", folder.path());
    CHECK(said.status == 0);
    const nlohmann::json report = nlohmann::json::parse(said.text);
    CHECK(report["fit_for_sale"] == true);
    CHECK(digests_below(folder / "kit") == before);
    CHECK_FALSE(std::filesystem::exists(folder / "dist"));
    CHECK(read(folder / "report.html").find("Fit for sale") != std::string::npos);
}

TEST_CASE("an audit of a release and of a bundle finds what was changed", "[audit]") {
    TestFolder folder;
    REQUIRE(quirewright("begin kit", folder.path()).status == 0);
    REQUIRE(quirewright("release kit --out out", folder.path()).status == 0);
    const Path release = folder / "out/kit/1.0.0";
    CHECK(quirewright("audit out/kit/1.0.0", folder.path()).status == 0);
    CHECK(quirewright("audit out/kit/1.0.0/kit-1.0.0.zip", folder.path()).status == 0);

    const auto rules_of = [&](const std::string& subject) {
        const Said said = quirewright("audit " + subject + " --json", folder.path());
        CHECK(said.status == 1);
        std::set<std::string> rules;
        const nlohmann::json report = nlohmann::json::parse(said.text);
        for (const auto& finding : report["findings"]) rules.insert(finding["rule"].get<std::string>());
        return rules;
    };
    std::string zip = read(release / "kit-1.0.0.zip");
    const std::string whole = zip;
    zip[zip.size() / 3] = static_cast<char>(zip[zip.size() / 3] ^ 1);
    write(release / "kit-1.0.0.zip", zip);
    CHECK(rules_of("out/kit/1.0.0/kit-1.0.0.zip").count("bundle-damaged") == 1);
    CHECK(rules_of("out/kit/1.0.0").count("bundle-damaged") == 1);
    write(release / "kit-1.0.0.zip", whole.substr(0, whole.size() / 2));
    CHECK(rules_of("out/kit/1.0.0/kit-1.0.0.zip").count("bundle-damaged") == 1);

    // A zip that is whole but lies about one file.
    REQUIRE(run("mkdir x && cd x && unzip -qq ../out/kit/1.0.0/kit-1.0.0.zip", folder.path()).status != 0);
    write(release / "kit-1.0.0.zip", whole);
    REQUIRE(run("cd x && unzip -qqo ../out/kit/1.0.0/kit-1.0.0.zip && echo >>a4/materials.pdf && rm letter/materials.pdf && zip -qr ../lies.zip .",
                folder.path())
                .status == 0);
    const auto lies = rules_of("lies.zip");
    CHECK(lies.count("bundle-digests") == 1);
    CHECK(lies.count("bundle-complete") == 1);

    // A loose file of the release that was opened and saved again.
    write(release / "a4/materials.pdf", read(release / "a4/materials.pdf") + "\n");
    CHECK(rules_of("out/kit/1.0.0").count("record-agrees") == 1);
    write(release / "release.json", "{}");
    CHECK(rules_of("out/kit/1.0.0").count("record-readable") == 1);
}
