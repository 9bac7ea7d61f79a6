// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("the demo kits are released", "[release]") {
    std::filesystem::remove_all(released);
    for (const std::string& kit : demo_kits) {
        const nlohmann::json report = quirewright_json("release " + quoted((source_folder / "kits" / kit).string()) + " --out . --json");
        INFO(report.dump(2));
        CHECK(report["fit_for_sale"] == true);
        for (const auto& finding : report["findings"]) CHECK(finding["level"] == "note");
        for (const char* file : {"release.json", "audit.html", "audit.json", "contents.txt"}) CHECK(std::filesystem::exists(release_of(kit) / file));
        CHECK(std::filesystem::exists(release_of(kit) / (kit + "-1.0.0.zip")));
        for (const char* paper : {"letter", "a4"}) {
            for (const char* print : {"borderless", "bordered"}) CHECK_FALSE(files_below(release_of(kit) / paper / print, ".pdf").empty());
            for (const char* sheet : {"measurements", "materials", "print-check"})
                CHECK(std::filesystem::exists(release_of(kit) / paper / (std::string(sheet) + ".pdf")));
        }
        // Nothing of the making is left beside the release.
        for (const auto& entry : std::filesystem::directory_iterator(released / kit)) {
            const std::string name = entry.path().filename();
            CHECK((name == "1.0.0" || name == ".lock"));
        }
    }
}
