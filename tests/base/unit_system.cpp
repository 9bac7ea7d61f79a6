// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/unit_system.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;

TEST_CASE("lengths are read as people write them") {
    const std::pair<const char*, Length> table[] = {{"3 mm", 3_mm},
                                                    {"3mm", 3_mm},
                                                    {"15.3 cm", 153_mm},
                                                    {"5 5/8 in", 5.625_in},
                                                    {"5 5/8in", 5.625_in},
                                                    {"1/8 in", 0.125_in},
                                                    {"12 pt", 12_pt},
                                                    {"0.5in", 0.5_in},
                                                    {".5 in", 0.5_in},
                                                    {" 3  mm ", 3_mm},
                                                    {"-3 mm", -(3_mm)},
                                                    {"-5 5/8 in", -(5.625_in)},
                                                    {"+3 mm", 3_mm},
                                                    {"0 mm", Length()},
                                                    {"221.9 mm", 221.9_mm},
                                                    {"8 1/2 in", 8.5_in},
                                                    {"10/4 in", 2.5_in},
                                                    {"100000 mm", Length::mm(100'000)},
                                                    {"3/64 in", Length::inches(3 / 64.0)}};
    for (const auto& [text, length] : table) {
        INFO(text);
        const auto read = read_length(text);
        REQUIRE(read);
        CHECK(*read == length);
    }
}

TEST_CASE("what is no length, or has no unit, is not read") {
    for (const char* text :
         {"",          " ",      "3",      "3.",         "mm",       "3 px",       "3 inch",      "3 MM",    "3 m",         "1/0 in",
          "5 5/0 in",  "1/ in",  "/8 in",  "3,5 mm",     "1e3 mm",   "0x3 mm",     "nan mm",      "inf mm",  "3 mm mm",     "3 mm 4",
          "3 mm 4 mm", "--3 mm", "3 - mm", "5 5 5/8 in", "5.5/8 in", "5 5.5/8 in", "100000.1 mm", "4000 in", "99999999 mm", "3 mm\xc2\xa0",
          "٣ mm",      "1/8\"",  "3 mm;",  "3\nmm2"}) {
        INFO(text);
        CHECK_FALSE(read_length(text));
    }
    CHECK_FALSE(read_length(std::string(100'000, '3') + " mm"));
    CHECK_FALSE(read_length(std::string("3 mm\0", 5)));
}

TEST_CASE("rounding goes the way that keeps the craft working, once") {
    const Length half = 0.5_mm;
    CHECK(round_to_step(144.3_mm, half, Rounding::up) == 144.5_mm);
    CHECK(round_to_step(144.3_mm, half, Rounding::down) == 144_mm);
    CHECK(round_to_step(144.3_mm, half, Rounding::nearest) == 144.5_mm);
    CHECK(round_to_step(144.2_mm, half, Rounding::nearest) == 144_mm);
    CHECK(round_to_step(144.25_mm, half, Rounding::nearest) == 144.5_mm);
    CHECK(round_to_step(-(144.3_mm), half, Rounding::up) == -(144_mm));
    CHECK(round_to_step(-(144.3_mm), half, Rounding::down) == -(144.5_mm));
}

TEST_CASE("a value within 0.05 mm of a step is that step") {
    const Length half = 0.5_mm;
    CHECK(round_to_step(144.02_mm, half, Rounding::up) == 144_mm);  // not 144.5
    CHECK(round_to_step(144.05_mm, half, Rounding::up) == 144_mm);
    CHECK(round_to_step(144.06_mm, half, Rounding::up) == 144.5_mm);
    CHECK(round_to_step(143.98_mm, half, Rounding::down) == 144_mm);
    CHECK(round_to_step(143.95_mm, half, Rounding::down) == 144_mm);
    CHECK(round_to_step(143.94_mm, half, Rounding::down) == 143.5_mm);
}

TEST_CASE("every sixteenth up to 24 in is itself, whichever way, and however it was computed") {
    const Length step = Length::inches(1.0 / 16);
    for (int n = 1; n <= 384; ++n) {
        INFO(n);
        const Length exact = Length::inches(n) / 16;
        for (const Length value : {exact, Length::mm(n * 25.4 / 16), Length::inches(n * 0.0625), 384 * exact / 384, Length::mm(n * 1.5875)}) {
            for (const Rounding way : {Rounding::up, Rounding::down, Rounding::nearest}) CHECK(round_to_step(value, step, way) == exact);
        }
    }
}

TEST_CASE("metric values are shown short, inch values as reduced fractions") {
    CHECK(show_metric(153_mm) == "153 mm");
    CHECK(show_metric(4.5_mm) == "4.5 mm");
    CHECK(show_metric(0.125_mm) == "0.12 mm");
    CHECK(show_metric(100_mm) == "100 mm");
    CHECK(show_metric(Length()) == "0 mm");
    CHECK(show_metric(Length::mm(-0.001)) == "0 mm");
    CHECK(show_metric(-(4.5_mm)) == "-4.5 mm");
    CHECK(show_us(8.75_in) == "8 3/4 in");
    CHECK(show_us(0.0625_in) == "1/16 in");
    CHECK(show_us(12_in) == "12 in");
    CHECK(show_us(Length()) == "0 in");
    CHECK(show_us(Length::inches(1.0 / 64)) == "1/64 in");
    CHECK(show_us(Length::inches(63.6 / 64)) == "1 in");
    CHECK(show_us(-(0.5_in)) == "-1/2 in");
    CHECK(show_us(Length::inches(-1.0 / 200)) == "0 in");
    CHECK(show(153_mm, UnitSystem::metric) == "153 mm");
    CHECK(show(153_mm, 216_mm, UnitSystem::metric) == "153 x 216 mm");
    CHECK(show(5.625_in, 8.75_in, UnitSystem::us) == "5 5/8 x 8 3/4 in");
}

TEST_CASE("what is shown in inches is read back") {
    for (int n = -640; n <= 640; ++n) {
        const Length length = Length::inches(n) / 64;
        const auto read = read_length(show_us(length));
        INFO(show_us(length));
        REQUIRE(read);
        CHECK(abs(*read - length) <= Length::units(1));
    }
}
