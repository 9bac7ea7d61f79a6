// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

#include <regex>

using namespace qw;
using namespace qw::test;

TEST_CASE("what nobody sees of parts stays white, and the report says how much that saves", "[bundle]") {
    CHECK_THAT(read(release_of("tidewater-almanac") / "audit.html"), Catch::Contains(" % left white"));
}

TEST_CASE("other programs open the bundle and find what contents.txt tells", "[bundle]") {
    for (const std::string& kit : demo_kits) {
        TestFolder folder;
        const std::string zip = quoted((release_of(kit) / (kit + "-1.0.0.zip")).string());
        CHECK(run("unzip -tqq " + zip, folder.path()).status == 0);
        REQUIRE(run("python3 -m zipfile -e " + zip + " out", folder.path()).status == 0);
        const Said sums = run("sha256sum --strict -c contents.txt", folder.path() / "out");
        INFO(sums.text);
        CHECK(sums.status == 0);
        const std::string contents = read(folder.path() / "out/contents.txt");
        std::size_t told = 0;
        for (const char c : contents) told += c == '\n';
        std::size_t files = 0;
        static const std::regex safe("[a-z0-9._/-]{1,180}");
        for (const auto& entry : std::filesystem::recursive_directory_iterator(folder.path() / "out")) {
            if (!entry.is_regular_file()) continue;
            ++files;
            CHECK(std::regex_match(std::filesystem::relative(entry.path(), folder.path() / "out").string(), safe));
        }
        CHECK(told + 1 == files);
    }
}

TEST_CASE("release.json tells the truth", "[bundle]") {
    for (const std::string& kit : demo_kits) {
        const nlohmann::json record = nlohmann::json::parse(read(release_of(kit) / "release.json"));
        CHECK(record["format"] == 1);
        CHECK(record["kit"] == kit);
        const auto digests = digests_below(release_of(kit));
        for (const auto& bundle : record["bundles"]) CHECK(digests.at(bundle["path"]) == bundle["sha256"]);
        for (const auto& file : record["files"]) {
            CHECK(digests.at(file["path"]) == file["sha256"]);
            if (file["role"] == "contents") continue;
            const Said pages = run("pdfinfo " + quoted((release_of(kit) / file["path"].get<std::string>()).string()) + " | sed -n 's/^Pages: *//p'", "/");
            CHECK(std::stoi(pages.text) == file["pages"].get<int>());
        }
        std::size_t artwork = 0;
        for (const auto& input : record["inputs"]) {
            const std::string path = input["path"];
            CHECK((path.starts_with("kit/") || path.starts_with("pipeline/") || path.starts_with("system/")));
            const Path real = path.starts_with("kit/")        ? source_folder / "kits" / kit / path.substr(4)
                              : path.starts_with("pipeline/") ? source_folder / path
                                                              : Path();
            if (real.empty()) continue;
            artwork += path.starts_with("kit/art/");
            CHECK(input.contains("done") == path.starts_with("kit/art/"));
            if (path.starts_with("kit/art/pages/")) CHECK(input["done"] == "passed through");
            if (path.ends_with(".pdf")) CHECK(input["done"] == "its pages drawn as they are, without annotations");
            const Said sum = run("sha256sum " + quoted(real.string()), "/");
            CHECK(sum.text.substr(0, 64) == input["sha256"]);
        }
        CHECK(artwork == (kit == "tidewater-almanac" ? 64u : 2u));
    }
}

TEST_CASE("nothing that is published tells of the machine", "[bundle]") {
    for (const std::string& kit : demo_kits) {
        const Said found = run("grep -rlaF -e " + quoted(source_folder.string()) + " -e " + quoted(released.string()) + " .", release_of(kit));
        CHECK(found.text.empty());
    }
}
