// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/region.h"

#include "parts/outline.h"

#include <catch2/catch.hpp>

#include <numbers>
#include <random>

namespace qw::parts::region_tests {

namespace {

Region box(double left, double bottom, double right, double top) {
    const auto mm = [](double v) { return Length::mm(v); };
    return {{{mm(left), mm(bottom)}, {mm(right), mm(bottom)}, {mm(right), mm(top)}, {mm(left), mm(top)}}};
}

Point at(double x, double y) { return {Length::mm(x), Length::mm(y)}; }

}  // namespace

TEST_CASE("areas of united, shared and subtracted regions add up") {
    const Region a = box(0, 0, 60, 40), b = box(30, 20, 90, 60);
    CHECK(area_mm2(united(a, b)) == Approx(2400 + 2400 - 600));
    CHECK(area_mm2(shared(a, b)) == Approx(600));
    CHECK(area_mm2(without(a, b)) == Approx(1800));
    CHECK(area_mm2(united({a, b, box(0, 0, 90, 60)})) == Approx(5400));
    CHECK(shared(a, box(60, 0, 90, 40)).empty());
    CHECK(without(a, {}) == a);
    CHECK(bounds({}) == Rect{});
}

TEST_CASE("a hole is no part of a region, and its ring runs clockwise") {
    const Region frame = without(box(0, 0, 60, 40), box(10, 10, 50, 30));
    REQUIRE(frame.size() == 2);
    CHECK(area_mm2(frame) == Approx(2400 - 800));
    CHECK(holds(frame, at(5, 5)));
    CHECK_FALSE(holds(frame, at(30, 20)));
    CHECK(holds(frame, at(10, 20)));
    CHECK_FALSE(holds(frame, at(61, 20)));
}

TEST_CASE("regions grow with round corners and shrink") {
    CHECK(area_mm2(grown(box(0, 0, 60, 40), Length::mm(3))) == Approx(2400 + 200 * 3 + std::numbers::pi * 9).epsilon(2e-4));
    CHECK(area_mm2(grown(box(0, 0, 60, 40), Length::mm(-3))) == Approx(54 * 34));
    CHECK(grown(box(0, 0, 60, 40), Length::mm(-20.01)).empty());
    CHECK(area_mm2(grown(box(0, 0, 60, 40), {})) == Approx(2400));
}

TEST_CASE("maps keep what is a hole and what is not") {
    const Region frame = without(box(0, 0, 60, 40), box(10, 10, 50, 30));
    const Matrix mirrored{-1, 0, 0, 1, 72, 0}, turned{0, 1, -1, 0, 0, 0};
    CHECK(area_mm2(mapped(frame, mirrored)) == Approx(1600));
    CHECK(bounds(mapped(frame, mirrored)).right == Length::mm(25.4));
    CHECK(area_mm2(mapped(frame, turned)) == Approx(1600));
    CHECK(bounds(mapped(frame, turned)) == Rect{Length::mm(-40), Length::mm(0), Length::mm(0), Length::mm(60)});
    CHECK(area_mm2(moved(frame, Length::mm(5), Length::mm(-7))) == Approx(1600));
}

TEST_CASE("what comes from rounding is no area") {
    CHECK(is_area(box(0, 0, 1, 0.06)));
    CHECK_FALSE(is_area(box(0, 0, 1, 0.04)));
    CHECK_FALSE(is_area(box(0, 0, 200, 0.015)));
    CHECK(is_area(box(0, 0, 200, 0.03)));
    CHECK_FALSE(is_area({}));
}

TEST_CASE("random boxes: the area of both and of either make up the two") {
    std::mt19937 chance(4);
    std::uniform_real_distribution<double> place(0, 100), size(1, 60);
    for (int i = 0; i < 200; ++i) {
        const double x = place(chance), y = place(chance), u = place(chance), v = place(chance);
        const Region a = box(x, y, x + size(chance), y + size(chance)), b = box(u, v, u + size(chance), v + size(chance));
        CHECK(area_mm2(united(a, b)) + area_mm2(shared(a, b)) == Approx(area_mm2(a) + area_mm2(b)));
        CHECK(area_mm2(without(a, b)) + area_mm2(shared(a, b)) == Approx(area_mm2(a)));
    }
}

}  // namespace qw::parts::region_tests
