// SPDX-License-Identifier: GPL-3.0-or-later
// Packing against all sets of places on a grid, for rectangles and angles of whole centimetres.
#include "parts/packing_all_boxes.h"
#include "parts/packing_judge.h"

#include <catch2/catch.hpp>

#include <cstdint>
#include <string>

namespace qw::tests::packing_brute {

namespace {

/// The same numbers everywhere (constants of Numerical Recipes' quick generator; from memory).
class Numbers {
public:
    explicit Numbers(std::uint32_t seed) : state_(seed) {}
    int between(int a, int b) {
        state_ = state_ * 1664525U + 1013904223U;
        return a + static_cast<int>((state_ >> 10) % static_cast<std::uint32_t>(b - a + 1));
    }

private:
    std::uint32_t state_;
};

struct Case {
    Cells cells;
    int width = 0, height = 0, cut_x = 0, cut_y = 0;  ///< a rectangle, and what is cut from its upper right corner
    int gap = 0;
    std::size_t wanted = 0;

    parts::Region shape() const {
        const double w = 10 * width, h = 10 * height, x = 10 * (width - cut_x), y = 10 * (height - cut_y);
        return cut_x == 0 ? rectangle_mm(w, h) : shape_mm({{0, 0}, {w, 0}, {w, y}, {x, y}, {x, h}, {0, h}});
    }
    Size area() const { return {Length::mm(10 * cells.width), Length::mm(10 * cells.height)}; }
    std::string text() const {
        return std::to_string(width) + "x" + std::to_string(height) + " less " + std::to_string(cut_x) + "x" + std::to_string(cut_y) +
               " on " + std::to_string(cells.width) + "x" + std::to_string(cells.height) + ", gap " + std::to_string(gap) +
               ", wanted " + std::to_string(wanted);
    }
};

Case any_case(Numbers& numbers) {
    Case c;
    c.cells.width = numbers.between(3, 8);
    c.cells.height = numbers.between(3, 8);
    c.width = numbers.between(1, 4);
    c.height = numbers.between(2, 4);
    if (c.width > 1 && numbers.between(0, 1) == 1) {
        c.cut_x = numbers.between(1, c.width - 1);
        c.cut_y = numbers.between(1, c.height - 1);
    }
    c.gap = numbers.between(0, 3) == 0 ? numbers.between(1, 2) : 0;
    c.wanted = static_cast<std::size_t>(numbers.between(1, 6));
    for (int x = 0; x < c.width; ++x)
        for (int y = 0; y < c.height; ++y)
            if (x < c.width - c.cut_x || y < c.height - c.cut_y) c.cells.shape.push_back({x, y});
    return c;
}

}  // namespace

TEST_CASE("Packing holds at least what any set of places on a grid holds", "[packing]") {
    Numbers numbers(1);
    int angles = 0, with_gap = 0, mixed = 0;
    for (int i = 0; i < 400; ++i) {
        const Case c = any_case(numbers);
        INFO(c.text());
        const Length gap = Length::mm(10 * c.gap);
        const auto fill = parts::fill_sheet(c.shape(), c.area(), gap, c.wanted);
        REQUIRE(wrong_with(fill, c.shape(), c.area(), gap) == "");
        REQUIRE(fill.spots.size() <= c.wanted);
        REQUIRE(fill.spots.size() >= most_on_cells(c.cells, c.gap, c.wanted));
        angles += c.cut_x > 0;
        with_gap += c.gap > 0;
        for (const auto& spot : fill.spots) mixed += spot.quarter_turns != fill.spots[0].quarter_turns;
    }
    CHECK(angles > 100);
    CHECK(with_gap > 50);
    CHECK(mixed > 50);
}

TEST_CASE("No grid holds more boxes than their upper bound says", "[packing]") {
    Numbers numbers(2);
    int reached = 0;
    for (int i = 0; i < 300; ++i) {
        Case c = any_case(numbers);
        c.cut_x = c.cut_y = 0;
        c.cells.shape.clear();
        for (int x = 0; x < c.width; ++x)
            for (int y = 0; y < c.height; ++y) c.cells.shape.push_back({x, y});
        if (c.width * c.height < 6) continue;
        INFO(c.text());
        const std::size_t most = most_on_cells(c.cells, c.gap, 64);
        const Size box{Length::mm(10 * c.width), Length::mm(10 * c.height)};
        const std::size_t bound = parts::packing::most_boxes(c.area(), box, Length::mm(10 * c.gap));
        REQUIRE(bound >= most);
        reached += bound == most;
        if (c.gap > 0) continue;
        REQUIRE(parts::packing::boxes_on(c.area(), box, 64, 100000).size() == most);
        const auto as_many = parts::packing::all_ways(c.area(), box, most, 100000);
        const auto more = parts::packing::all_ways(c.area(), box, most + 1, 100000);
        REQUIRE((as_many && as_many->size() == most));
        REQUIRE((more && more->empty()));
    }
    CHECK(reached > 100);
}

TEST_CASE("Four angles in a ring hold each other off the corners", "[packing]") {
    const auto shape = shape_mm({{0, 0}, {40, 0}, {40, 10}, {20, 10}, {20, 40}, {0, 40}});
    const Size area{Length::mm(70), Length::mm(70)};
    const auto fill = parts::fill_sheet(shape, area, {}, 4);
    CHECK(fill.spots.size() == 4);
    CHECK(wrong_with(fill, shape, area, {}) == "");
}

}  // namespace qw::tests::packing_brute
