// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/amounts.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::materials;
using namespace qw::literals;

namespace {

constexpr UnitSystem metric = UnitSystem::metric, us = UnitSystem::us;

}  // namespace

TEST_CASE("what a shop measures off is rounded up to what it measures in") {
    CHECK(shop_length(1186.9_mm, metric) == "1.2 m");  // 1079 mm and a tenth
    CHECK(shop_length(1200_mm, metric) == "1.2 m");
    CHECK(shop_length(1200.2_mm, metric) == "1.3 m");
    CHECK(shop_length(1000_mm, metric) == "1 m");
    CHECK(shop_length(999_mm, metric) == "1 m");
    CHECK(shop_length(831.6_mm, metric) == "85 cm");
    CHECK(shop_length(355.3_mm, metric) == "40 cm");
    CHECK(shop_length(12_mm, metric) == "5 cm");
    CHECK(shop_length(2640_mm, metric) == "2.7 m");
    CHECK(shop_length(12.1_in, us) == "13 in");
    CHECK(shop_length(13_in, us) == "13 in");
    CHECK(shop_length(35.5_in, us) == "1 yd");
    CHECK(shop_length(36_in, us) == "1 yd");
    CHECK(shop_length(36.1_in, us) == "1 1/8 yd");
    CHECK(shop_length(46.6_in, us) == "1 3/8 yd");
    CHECK(shop_length(72.5_in, us) == "2 1/8 yd");
}

TEST_CASE("whatever is bought is enough, and not much more than a step too much") {
    for (int tenths = 1; tenths < 40000; tenths += 37) {
        const Length needed = Length::mm(tenths / 10.0);
        CAPTURE(needed.in_mm());
        const std::string text = shop_length(needed, metric);
        const double number = std::stod(text);
        const Length bought = Length::mm(number * (text.ends_with("cm") ? 10 : 1000));
        CHECK(bought + snap_to_step >= needed);
        CHECK(bought - needed < (needed < 1000_mm ? 50_mm : 100_mm));
    }
}

TEST_CASE("an allowance is stated") {
    CHECK(to_buy(1079_mm, 0.1, metric) == "buy 1.2 m (10 % more)");
    CHECK(to_buy(42.5_in, 0.1, us) == "buy 1 3/8 yd (10 % more)");
    CHECK(to_buy(756_mm, 0.125, metric) == "buy 90 cm (12.5 % more)");
    CHECK(to_buy(452_mm, 0.1, metric, 38_mm) == "buy 50 cm, 38 mm wide (10 % more)");
    CHECK(to_buy(18_in, 0.1, us, 1.5_in) == "buy 20 in, 1 1/2 in wide (10 % more)");
    CHECK(to_buy(3, 0.2) == "buy 4 (1 to spare)");
    CHECK(to_buy(30, 0.1) == "buy 33 (3 to spare)");  // not 34 because of binary fractions
    CHECK(to_buy(31, 0.1) == "buy 35 (4 to spare)");
    CHECK(to_buy(3, 0).empty());
}

TEST_CASE("areas are whole, and enough") {
    CHECK(area_text(93000, metric) == "930 cm²");
    CHECK(area_text(93000.1, metric) == "931 cm²");
    CHECK(area_text(93000, us) == "145 sq in");  // 144.15
    CHECK(area_text(144 * 25.4 * 25.4, us) == "144 sq in");
}

TEST_CASE("what is longer than its sheet is pasted up from strips") {
    CHECK(strips_text(297_mm, 297_mm, 20_mm, metric).empty());
    CHECK(strips_text(297.04_mm, 297_mm, 20_mm, metric).empty());  // a ruler cannot tell
    CHECK(strips_text(297.5_mm, 297_mm, 20_mm, metric) == "in 2 strips that overlap 20 mm");
    CHECK(strips_text(574_mm, 297_mm, 20_mm, metric) == "in 2 strips that overlap 20 mm");  // 2 × 297 − 20
    CHECK(strips_text(575_mm, 297_mm, 20_mm, metric) == "in 3 strips that overlap 20 mm");
    CHECK(strips_text(400_mm, 297_mm, 20_mm, metric, false) == "in 2 parts that overlap 20 mm");
    CHECK(strips_text(18_in, 11_in, 0.75_in, us) == "in 2 strips that overlap 3/4 in");
    // Strips reach as far as the piece is long, and one fewer would not.
    for (int length = 300; length < 3000; length += 7) {
        const std::string text = strips_text(Length::mm(length), 297_mm, 20_mm, metric);
        const int strips = std::stoi(text.substr(3));
        CAPTURE(length);
        CHECK(strips * 297 - (strips - 1) * 20 >= length);
        CHECK((strips - 1) * 297 - (strips - 2) * 20 < length);
    }
}

TEST_CASE("the overlap is the template's own, in each ruler, and shrinks with the pages where it is printed") {
    kit::JournalTemplate journal;
    journal::Measures m;
    m.journal = &journal;
    m.conditions.scale = 0.5;
    CHECK(strip_overlap(m, metric) == 20_mm);
    CHECK(strip_overlap(m, us) == 0.75_in);
    journal.lengths.push_back({"tape-overlap", {16_mm, 0.625_in}, false, "", "", {}});
    CHECK(strip_overlap(m, metric) == 16_mm);
    journal.lengths.push_back({"strip-overlap", {12_mm, 0.5_in}, true, "", "", {}});
    CHECK(strip_overlap(m, metric) == 6_mm);
    CHECK(strip_overlap(m, us) == 0.25_in);
}

TEST_CASE("strips are cut from the smaller of printed sheet and paper") {
    journal::Conditions c;
    c.paper = {"iso_a4_210x297mm", "a4", "A4", {210_mm, 297_mm}, metric};
    CHECK(strip_sheet(c) == 297_mm);
    c.cover_sheet = {190_mm, 270_mm};
    CHECK(strip_sheet(c) == 297_mm);  // there are none
    c.full_sheets = 1;
    CHECK(strip_sheet(c) == 270_mm);
}

TEST_CASE("titles inside a sentence") {
    CHECK(inside_sentence("Bare holes") == "bare holes");
    CHECK(inside_sentence("PVA glue") == "PVA glue");
    CHECK(inside_sentence("A4 greyboard") == "A4 greyboard");
    CHECK(inside_sentence("A ribbon") == "a ribbon");
    CHECK(inside_sentence("").empty());
    CHECK(joined("a", ", ", "b") == "a, b");
    CHECK(joined("", ", ", "b") == "b");
    CHECK(joined("a", ", ", "") == "a");
}
