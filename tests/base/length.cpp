// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/geometry.h"
#include "base/length.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;

TEST_CASE("inches, points and hundredths of a millimetre are exact, and so are their sums") {
    // 1 in = 25.4 mm, international yard and pound agreement of 1959; 1 pt = 1/72 in, ISO 32000-1 8.3.2.3.
    static_assert(Length::inches(1) == Length::mm(25.4));
    static_assert(Length::points(72) == Length::inches(1));
    static_assert(Length::hundredths_mm(2540) == Length::inches(1));
    static_assert(1_in == 25.4_mm && 72_pt == 1_in);
    for (int n = 1; n <= 32 * 24; ++n) {  // every 1/32 in up to 24 in is a whole number of units; 1/64 in is half a unit off
        INFO(n);
        CHECK(Length::inches(n / 32.0).in_units() * 32 == n * Length::units_per_inch);
    }
    Length sum;
    for (int i = 0; i < 7200; ++i) sum += 1_pt;
    CHECK(sum == 100_in);
    for (int i = 0; i < 2540; ++i) sum -= Length::hundredths_mm(100);
    CHECK(sum == Length());
}

TEST_CASE("papers in points as printed in tables") {
    // Derived from ISO 216 and PWG 5101.1-2023 sizes at 72 pt to 25.4 mm.
    CHECK((210_mm).in_points() == Approx(595.2756).margin(0.00005));
    CHECK((297_mm).in_points() == Approx(841.8898).margin(0.00005));
    CHECK((8.5_in).in_points() == 612);
    CHECK((11_in).in_points() == 792);
    CHECK((148_mm).in_points() == Approx(419.5276).margin(0.00005));
}

TEST_CASE("arithmetic rounds to the nearest unit, away from zero at a half") {
    CHECK((Length::units(5) / 2).in_units() == 3);
    CHECK((Length::units(-5) / 2).in_units() == -3);
    CHECK((Length::units(10) * 0.26).in_units() == 3);
    CHECK(0.5 * 3_mm == 1.5_mm);
    CHECK(3_mm / 2_mm == 1.5);
    CHECK(-(3_mm) == Length::mm(-3));
    CHECK(abs(Length::mm(-3)) == 3_mm);
    CHECK(min(1_mm, 1_in) == 1_mm);
    CHECK(max(1_mm, 1_in) == 1_in);
    CHECK(1_mm < 1_in);
}

TEST_CASE("rectangles hold, share and are centred") {
    const Rect sheet = Rect::of({297_mm, 210_mm});
    const Rect inner = Rect::centred({100_mm, 50_mm}, sheet);
    CHECK(inner == Rect{98.5_mm, 80_mm, 198.5_mm, 130_mm});
    CHECK(sheet.holds(inner));
    CHECK_FALSE(inner.holds(sheet));
    CHECK(inner.holds(inner.inset(Length::mm(-1)), 1_mm));
    CHECK_FALSE(inner.holds(inner.inset(Length::mm(-1.01)), 1_mm));
    CHECK(sheet.shared_with(inner.moved(1000_mm, Length())).empty());
    CHECK(sheet.shared_with(inner.moved(150_mm, Length())) == Rect{248.5_mm, 80_mm, 297_mm, 130_mm});
    CHECK(sheet.centre() == Point{148.5_mm, 105_mm});
    CHECK(Size{210_mm, 297_mm}.as_landscape() == Size{297_mm, 210_mm});
    CHECK(Size{210_mm, 297_mm}.as_portrait() == Size{210_mm, 297_mm});
    CHECK_FALSE(Size{100_mm, 100_mm}.landscape());
}

TEST_CASE("matrices follow one another in the order of PDF's cm") {
    const Matrix moved{1, 0, 0, 1, 10, 20}, doubled{2, 0, 0, 2, 0, 0};
    CHECK(doubled.after(moved) == Matrix{2, 0, 0, 2, 20, 40});  // first moved, then doubled
    CHECK(moved.after(doubled) == Matrix{2, 0, 0, 2, 10, 20});
    const Matrix quarter{0, 1, -1, 0, 0, 0};
    CHECK(quarter.after(quarter) == Matrix{-1, 0, 0, -1, 0, 0});
}
