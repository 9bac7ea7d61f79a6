// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("the same kit gives the same bytes whatever the folder, zone, locale, umask and number of jobs", "[same-bytes]") {
    // tests/locales.sh makes them; a machine without them would run this test in the C locale and prove nothing.
    for (const std::string locale : {"de_DE", "tr_TR"}) {
        INFO("locale " << locale << " is missing: run tests/locales.sh");
        REQUIRE(run("locale -a | grep -qi '^" + locale + ".utf-\\{0,1\\}8$'", "/").status == 0);
    }
    const std::vector<std::pair<std::string, std::string>> places = {
        {"TZ=Asia/Kathmandu LC_ALL=de_DE.UTF-8", "umask 077 && "}, {"TZ=America/St_Johns LC_ALL=tr_TR.UTF-8", "umask 002 && "}};
    for (const std::string& kit : demo_kits) {
        const auto first = digests_below(release_of(kit));
        REQUIRE(first.size() > 10);
        int number = 0;
        for (const auto& [environment, before] : places) {
            // The large kit goes to one of the places, the small one to both.
            if (++number == 1 && kit != "lamplight-mini") continue;
            TestFolder folder;
            const Path copied = copy_of_kit(kit, folder.path() / ("a folder of its own " + std::to_string(number)));
            const Said said = run(before + environment + " " + quoted(program) + " release " + quoted(copied.string()) + " --out out --jobs " +
                                      std::to_string(3 - number),
                                  folder.path());
            INFO(said.text);
            REQUIRE(said.status == 0);
            CHECK(digests_below(folder.path() / "out" / kit / "1.0.0") == first);
        }
    }
}

TEST_CASE("the date is the environment's, then the kit's, then 1980", "[same-bytes]") {
    TestFolder folder;
    const Path kit = copy_of_kit("lamplight-mini", folder.path());
    const auto date_in = [&](const std::string& environment) {
        REQUIRE(run(environment + " " + quoted(program) + " release " + quoted(kit.string()) + " --out out", folder.path()).status == 0);
        return run("TZ=UTC unzip -l out/lamplight-mini/1.0.0/lamplight-mini-1.0.0.zip | sed -n 4p; pdfinfo "
                   "out/lamplight-mini/1.0.0/a4/measurements.pdf | grep CreationDate",
                   folder.path())
            .text;
    };
    const std::string own = date_in("env -u SOURCE_DATE_EPOCH TZ=UTC");
    CHECK(own.find("2026-09-01") != std::string::npos);
    // 1700000000 s after 1970-01-01 is 2023-11-14 UTC (date -u -d @1700000000).
    const std::string epoch = date_in("SOURCE_DATE_EPOCH=1700000000 TZ=UTC");
    CHECK(epoch.find("2023-11-14") != std::string::npos);
    CHECK(epoch.find("Nov 14") != std::string::npos);
    CHECK(run("SOURCE_DATE_EPOCH=yesterday " + quoted(program) + " release " + quoted(kit.string()) + " --out out", folder.path()).status == 2);
}
