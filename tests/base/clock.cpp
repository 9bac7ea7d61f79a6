// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/clock.h"

#include <catch2/catch.hpp>

using namespace qw;

TEST_CASE("days are read in one form, and only days that files can carry") {
    CHECK(Date::read("2026-09-01") == Date{2026, 9, 1});
    CHECK(Date::read("2024-02-29") == Date{2024, 2, 29});
    CHECK(Date::read("1980-01-01") == Date{1980, 1, 1});   // first and last day of a ZIP entry:
    CHECK(Date::read("2107-12-31") == Date{2107, 12, 31});  // Microsoft, FileTimeToDosDateTime
    for (const char* text : {"", "2026", "2026-9-1", "2026-09-01 ", " 2026-09-01", "2026-02-29", "2026-04-31", "2026-13-01", "2026-00-10",
                             "2026-01-00", "1979-12-31", "2108-01-01", "01.09.2026", "2026/09/01", "+026-09-01", "2026-09-01T00:00"}) {
        INFO(text);
        CHECK_FALSE(Date::read(text));
    }
}

TEST_CASE("SOURCE_DATE_EPOCH has a floor of 1980") {
    // reproducible-builds.org, SOURCE_DATE_EPOCH: for ZIP, max(315532800, value).
    CHECK(Date::from_epoch(0) == Date{1980, 1, 1});
    CHECK(Date::from_epoch(-1) == Date{1980, 1, 1});
    CHECK(Date::from_epoch(315532799) == Date{1980, 1, 1});
    CHECK(Date::from_epoch(315532800) == Date{1980, 1, 1});
    CHECK(Date::from_epoch(315532800 + 86399) == Date{1980, 1, 1});
    CHECK(Date::from_epoch(315532800 + 86400) == Date{1980, 1, 2});
    CHECK(Date::from_epoch(1709164800) == Date{2024, 2, 29});
    CHECK(Date::from_epoch(std::int64_t{1} << 62) == Date{2107, 12, 31});
}

TEST_CASE("days as PDF, ZIP and people write them") {
    CHECK(Date{2026, 9, 1}.iso() == "2026-09-01");
    CHECK(Date{2026, 9, 1}.pdf() == "D:20260901000000Z");  // ISO 32000-1 7.9.4
    // Microsoft, DosDateTimeToFileTime: bits 0-4 day, 5-8 month, 9-15 year - 1980.
    CHECK(Date{1980, 1, 1}.dos() == 0x0021);
    CHECK(Date{2000, 1, 1}.dos() == 0x2821);
    CHECK(Date{2024, 2, 29}.dos() == 0x585D);
    CHECK(Date{2107, 12, 31}.dos() == 0xFF9F);
    CHECK(Date{}.iso() == "1980-01-01");
}
