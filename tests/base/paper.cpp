// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/edition.h"
#include "base/paper.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace qw;

TEST_CASE("PWG 5101.1 names say their size") {
    // Names of PWG 5101.1-2023 as CUPS carries them (cups/pwg-media.c); sizes in 1/100 mm by its macros.
    const struct {
        const char* name;
        int width, length;
    } table[] = {{"iso_a4_210x297mm", 21000, 29700},      {"iso_a5_148x210mm", 14800, 21000},           {"iso_a3_297x420mm", 29700, 42000},
                 {"na_letter_8.5x11in", 21590, 27940},    {"na_legal_8.5x14in", 21590, 35560},          {"na_ledger_11x17in", 27940, 43180},
                 {"na_invoice_5.5x8.5in", 13970, 21590},  {"na_executive_7.25x10.5in", 18415, 26670},   {"na_index-4x6_4x6in", 10160, 15240},
                 {"na_5x7_5x7in", 12700, 17780},          {"na_arch-b_12x18in", 30480, 45720},          {"na_super-b_13x19in", 33020, 48260},
                 {"iso_sra4_225x320mm", 22500, 32000},    {"jis_b5_182x257mm", 18200, 25700},           {"jpn_hagaki_100x148mm", 10000, 14800},
                 {"om_folio_210x330mm", 21000, 33000},    {"iso_a4-extra_235.5x322.3mm", 23550, 32230}, {"na_quarto_8.5x10.83in", 21590, 27508},
                 {"na_monarch_3.875x7.5in", 9843, 19050}, {"custom_10x15cm_100x150mm", 10000, 15000}};
    for (const auto& row : table) {
        INFO(row.name);
        const auto size = size_of_pwg_name(row.name);
        REQUIRE(size);
        CHECK(std::lround(size->width.in_mm() * 100) == row.width);
        CHECK(std::lround(size->height.in_mm() * 100) == row.length);
    }
}

TEST_CASE("what is no name of a sheet is refused") {
    // PWG 5101.1-2023, ABNF: class, size name, dimensions without leading zeros, unit that fits the class.
    for (const char* name :
         {"", "a4", "iso_a4", "iso_a4_210x297", "iso_a4_210x297in", "na_letter_8.5x11mm", "iso_a4_0210x297mm", "iso_a4_210x0mm", "iso_a4_210 x 297mm",
          "ISO_A4_210x297mm", "iso__210x297mm", "iso_a4_210x297mm_x", "disc_standard_40x118mm", "roll_main_210x0mm",
          "choice_iso_a4_210x297mm_na_letter_8.5x11in", "xyz_a4_210x297mm", "iso_a4_-210x297mm", "iso_a4_210x297mm\n", "iso_a4_2e2x297mm"}) {
        INFO(name);
        CHECK_FALSE(size_of_pwg_name(name));
    }
    CHECK_FALSE(size_of_pwg_name("iso_" + std::string(100'000, 'a') + "_210x297mm"));
}

TEST_CASE("points become hundredths of a millimetre as CUPS makes them") {
    // CUPS, cups/pwg.h, PWG_FROM_POINTS.
    const std::pair<int, int> table[] = {{9, 318}, {12, 423}, {14, 494}, {18, 635}, {24, 847}, {27, 953}, {36, 1270}, {48, 1693}, {0, 0}, {72, 2540}};
    for (const auto& [points, hundredths] : table) CHECK(pwg_from_points(points) == Length::hundredths_mm(hundredths));
}

namespace {

Edition edition(const char* name, Length left, Length bottom, Length right, Length top) {
    Edition made;
    made.paper.name = name;
    made.paper.size = *size_of_pwg_name(name);
    made.print = Print::bordered;
    made.margins = {left, bottom, right, top};
    return made;
}

}  // namespace

TEST_CASE("bordered sheets have the scale that the margins leave") {
    // Margins from published driver data: 3 mm (IPP), 9, 12, 18 and 18/36/18/36 pt (HP and CUPS drivers), 5 mm (IPP).
    const auto pt = [](double n) { return Length::points(n); };
    const struct {
        Length side, foot;
        double letter, a4;
    } table[] = {{Length::mm(3), Length::mm(3), .9722, .9714}, {pt(9), pt(9), .9706, .9698},   {pt(12), pt(12), .9608, .9597},
                 {Length::mm(5), Length::mm(5), .9537, .9524}, {pt(18), pt(18), .9412, .9395}, {pt(18), pt(36), .9091, .9145}};
    for (const auto& row : table) {
        for (const bool landscape : {false, true}) {
            INFO(row.letter << (landscape ? " landscape" : " portrait"));
            const PrintFit letter = fit_of(edition("na_letter_8.5x11in", row.side, row.foot, row.side, row.foot), landscape);
            const PrintFit a4 = fit_of(edition("iso_a4_210x297mm", row.side, row.foot, row.side, row.foot), landscape);
            CHECK(std::lround(letter.scale * 10'000) == std::lround(row.letter * 10'000));
            CHECK(std::lround(a4.scale * 10'000) == std::lround(row.a4 * 10'000));
        }
    }
}

TEST_CASE("the larger margin of an axis counts, and the picture is centred on the paper") {
    const Length narrow = Length::mm(3), wide = Length::mm(12.7);
    for (const Margins& m : {Margins{narrow, wide, narrow, narrow}, Margins{narrow, narrow, narrow, wide}}) {
        const Edition one = edition("iso_a4_210x297mm", m.left, m.bottom, m.right, m.top);
        const PrintFit portrait = fit_of(one, false), landscape = fit_of(one, true);
        CHECK(portrait.printable == Rect::of({Length::mm(210), Length::mm(297)}).inset(narrow, wide));
        CHECK(landscape.printable == Rect::of({Length::mm(297), Length::mm(210)}).inset(wide, narrow));
        const auto centred = [](const PrintFit& fit) {  // to the unit, 28 nm: a picture of an odd number of units has no middle one
            const Point middle = fit.picture.centre(), wanted = Rect::of(fit.sheet).centre();
            return abs(middle.x - wanted.x) <= Length::units(1) && abs(middle.y - wanted.y) <= Length::units(1);
        };
        CHECK(centred(portrait));
        CHECK(centred(landscape));
        CHECK(landscape.printable.holds(landscape.picture, Length::units(1)));
        CHECK(portrait.printable.holds(portrait.picture, Length::units(1)));
        CHECK(landscape.scale == portrait.scale);
    }
}

TEST_CASE("borderless is the paper itself") {
    Edition one = edition("na_letter_8.5x11in", {}, {}, {}, {});
    one.print = Print::borderless;
    one.paper.short_name = "letter";
    const PrintFit fit = fit_of(one, true);
    CHECK(fit.scale == 1);
    CHECK(fit.picture == Rect::of({Length::inches(11), Length::inches(8.5)}));
    CHECK(one.folder() == "letter/borderless");
    CHECK(name_of(Print::bordered) == "bordered");
}
