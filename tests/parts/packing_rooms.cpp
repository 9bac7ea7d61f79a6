// SPDX-License-Identifier: GPL-3.0-or-later
// What packing stands on: sums of outlines, simpler outlines that hold them, bounds that are never too low.
#include "parts/packing_bound.h"
#include "parts/packing_judge.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace qw::tests::packing_rooms {

using namespace qw::literals;
namespace packing = qw::parts::packing;

namespace {

double sum_area(const parts::Region& a, const parts::Region& b) { return parts::area_mm2(packing::sum_of(a, b)); }

/// A frame with a way in, 100 x 100, walls of 10.
parts::Region harbour(double mouth) {
    return shape_mm({{0, 0}, {100, 0}, {100, 100}, {50 + mouth / 2, 100}, {50 + mouth / 2, 90}, {90, 90}, {90, 10}, {10, 10}, {10, 90},
                     {50 - mouth / 2, 90}, {50 - mouth / 2, 100}, {0, 100}});
}

}  // namespace

TEST_CASE("Sums of outlines have the areas that geometry gives", "[packing]") {
    CHECK(sum_area(rectangle_mm(30, 20), rectangle_mm(5, 7)) == Approx(35 * 27));
    // Convex ones: area, area and twice the mixed area; of two mirrored triangles the hexagon of six such.
    const auto triangle = shape_mm({{0, 0}, {40, 0}, {0, 30}});
    CHECK(sum_area(triangle, triangle) == Approx(4 * 600));
    CHECK(sum_area(triangle, packing::reflected(triangle)) == Approx(6 * 600));
    // Angles: their legs' sums are rectangles, here counted by what the whole square around them lacks.
    const auto angle = shape_mm({{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}});
    CHECK(sum_area(angle, rectangle_mm(5, 5)) == Approx(35 * 35 - 20 * 20));
    CHECK(sum_area(angle, angle) == Approx(60 * 60 - 2 * 20 * 20 - 20 * 20));
    CHECK(sum_area(angle, packing::reflected(angle)) == Approx(60 * 60 - 2 * 20 * 20));
}

TEST_CASE("What fits through a mouth may lie inside, what does not may lie there too", "[packing]") {
    const auto area_inside = [](double mouth, double side) {
        return sum_area(harbour(mouth), packing::reflected(rectangle_mm(side, side)));
    };
    // Inside an 80 x 80 basin a square of 20 has 60 x 60 places, whether or not it came through the mouth.
    CHECK(area_inside(15, 20) == Approx(120 * 120 - 60 * 60));
    // Through a mouth of 25, 5 wide, 10 + 20 deep … to the open: the walls' height and the square's side.
    CHECK(area_inside(25, 20) == Approx(120 * 120 - 60 * 60 - 5 * 30));
    const packing::NoFit blocked(packing::sum_of(harbour(15), packing::reflected(rectangle_mm(20, 20))));
    CHECK_FALSE(blocked.blocks({40_mm, 40_mm}));
    CHECK_FALSE(blocked.blocks({10_mm, 10_mm}));
    CHECK(blocked.blocks({9.99_mm, 10_mm}));
    CHECK(blocked.blocks({40_mm, 80_mm}));
    CHECK_FALSE(blocked.blocks({40_mm, 100_mm}));
}

TEST_CASE("Discs: one outside with its exact width, one inside", "[packing]") {
    for (const Length radius : {1_mm, 2.5_mm, 7.123_mm, Length::units(12345), Length::units(3)}) {
        const parts::Ring outside = packing::disc_outside(radius), inside = packing::disc_inside(radius);
        CHECK(parts::bounds({outside}) == Rect{-radius, -radius, radius, radius});
        for (std::size_t i = 0; i < outside.size(); ++i) {
            const Point a = outside[i], b = outside[(i + 1) % outside.size()];
            const double length = std::hypot((b.x - a.x).in_mm(), (b.y - a.y).in_mm());
            const double away = (a.x.in_mm() * b.y.in_mm() - a.y.in_mm() * b.x.in_mm()) / length;
            CHECK(away >= radius.in_mm() - 1e-9);
            CHECK(away <= radius.in_mm() * 1.0001 + 2e-4);
        }
        for (const Point p : inside) CHECK(std::hypot(p.x.in_mm(), p.y.in_mm()) <= radius.in_mm());
    }
}

TEST_CASE("An outline with fewer corners holds the one it stands for, within its bounds", "[packing]") {
    std::vector<std::pair<double, double>> corners;
    for (int i = 0; i < 300; ++i) {
        const double angle = 2 * std::numbers::pi * i / 300, radius = 40 + 8 * std::cos(5 * angle);
        corners.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
    }
    const auto star = shape_mm(corners);
    const auto fewer = packing::with_fewer_corners(star, 40);
    CHECK(packing::corners_of(fewer) < 100);
    CHECK(parts::bounds(fewer) == parts::bounds(star));
    CHECK(parts::area_mm2(parts::without(star, fewer)) < 0.01);
    CHECK(parts::area_mm2(fewer) < parts::area_mm2(star) * 1.02);
    const auto angle = shape_mm({{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}});
    CHECK(packing::with_fewer_corners(angle, 40) == angle);
}

TEST_CASE("It is proved that no two lie on a sheet, or not", "[packing]") {
    const std::vector<int> turns{0, 1, 2, 3};
    CHECK(packing::one_at_most(rectangle_mm(100, 100), {199.9_mm, 150_mm}, {}, {0}));
    CHECK_FALSE(packing::one_at_most(rectangle_mm(100, 100), {200_mm, 150_mm}, {}, {0}));
    CHECK(packing::one_at_most(rectangle_mm(100, 100), {204.9_mm, 150_mm}, 5_mm, {0}));
    CHECK_FALSE(packing::one_at_most(rectangle_mm(100, 100), {205_mm, 150_mm}, 5_mm, {0}));
    // Two right triangles of 100 x 60 are a rectangle; on less than that only one lies.
    const auto triangle = shape_mm({{0, 0}, {100, 0}, {0, 60}});
    CHECK_FALSE(packing::one_at_most(triangle, {100_mm, 60_mm}, {}, {0, 2}));
    CHECK(packing::one_at_most(triangle, {100_mm, 60_mm}, 1_mm, {0, 2}));
    CHECK_FALSE(packing::one_at_most(triangle, {110_mm, 110_mm}, {}, turns));
    // An envelope laid flat, 150 x 180: its lids overlap on A4 however it is turned.
    const auto envelope = shape_mm({{40, 0}, {110, 0}, {115, 40}, {150, 45}, {150, 125}, {115, 130}, {75, 180}, {35, 130}, {0, 125}, {0, 45}, {35, 40}});
    const auto fill = parts::fill_sheet(envelope, {210_mm, 297_mm}, 3_mm, 5);
    CHECK(fill.spots.size() == 1);
    CHECK(fill.exact);
    CHECK(packing::most_copies(envelope, {210_mm, 297_mm}, 3_mm) > 1);
    CHECK(parts::fill_sheet(envelope, {297_mm, 420_mm}, 3_mm, 5).spots.size() > 2);
}

TEST_CASE("The upper bound of copies is reached by what fills a sheet, and not passed", "[packing]") {
    CHECK(packing::most_copies(rectangle_mm(50, 20), {100_mm, 60_mm}, {}) == 6);
    CHECK(packing::most_copies(rectangle_mm(48, 18), {100_mm, 62_mm}, 4_mm) == 6);
    CHECK(packing::most_copies(shape_mm({{0, 0}, {100, 0}, {0, 60}}), {200_mm, 120_mm}, {}) == 8);
    // Rounded corners: what lies in the shape counts.
    std::vector<std::pair<double, double>> corners;
    for (int corner = 0; corner < 4; ++corner)
        for (int i = 0; i <= 20; ++i) {
            const double angle = std::numbers::pi / 2 * (corner - 1 + i / 20.0);
            corners.emplace_back((corner == 0 || corner == 1 ? 85 : 5) + 5 * std::cos(angle), (corner == 1 || corner == 2 ? 45 : 5) + 5 * std::sin(angle));
        }
    CHECK(packing::most_copies(shape_mm(corners), {190_mm, 110_mm}, {}) == 4);
    CHECK(packing::most_copies(shape_mm(corners), {180_mm, 100_mm}, {}) == 4);
}

}  // namespace qw::tests::packing_rooms
