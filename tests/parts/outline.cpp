// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/outline.h"

#include "parts/arcs.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace qw::parts::outline_tests {

namespace {

using Kind = kit::OutlineStep::Kind;

Point at(double x, double y) { return {Length::mm(x), Length::mm(y)}; }
Step corner(double x, double y) { return {Kind::corner, at(x, y), {}, {}}; }
Step rounded(double x, double y, double r) { return {Kind::rounded, at(x, y), Length::mm(r), {}}; }
Step arc(double through_x, double through_y, double x, double y) { return {Kind::arc, at(x, y), {}, at(through_x, through_y)}; }

std::string code_of(const std::vector<Step>& steps) {
    const MadeOutline made = outline_of(steps);
    REQUIRE(made.outline.has_value() == made.faults.empty());
    return made.faults.empty() ? "" : made.faults.front().code;
}

double area_of(const std::vector<Step>& steps) {
    const MadeOutline made = outline_of(steps);
    REQUIRE(made.outline);
    return area_mm2(made.outline->region());
}

}  // namespace

TEST_CASE("an outline runs counter-clockwise whichever way its steps are written") {
    CHECK(area_of({corner(0, 0), corner(80, 0), corner(80, 50), corner(0, 50)}) == Approx(4000));
    CHECK(area_of({corner(0, 0), corner(0, 50), corner(80, 50), corner(80, 0)}) == Approx(4000));
    CHECK(area_of({corner(0, 0), arc(10, -10, 20, 0)}) == Approx(std::numbers::pi * 50).epsilon(0.002));
    CHECK(area_of({corner(0, 0), arc(10, 10, 20, 0)}) == Approx(std::numbers::pi * 50).epsilon(0.002));
}

TEST_CASE("rounded corners take a quarter of a circle") {
    // A square of 40 mm with corners of 5 mm loses (4 - pi) r^2.
    const std::vector<Step> steps{rounded(0, 0, 5), rounded(40, 0, 5), rounded(40, 40, 5), rounded(0, 40, 5)};
    const MadeOutline made = outline_of(steps);
    REQUIRE(made.outline);
    CHECK(area_mm2(made.outline->region()) == Approx(1600 - (4 - std::numbers::pi) * 25).epsilon(1e-3));
    REQUIRE(made.outline->edges.size() == 8);
    for (const Outline::Edge& edge : made.outline->edges)
        if (edge.centre) CHECK_FALSE(edge.clockwise);
    CHECK(made.outline->edges.back().to == made.outline->start);
}

TEST_CASE("a rounding at an inner corner turns the other way") {
    const MadeOutline made = outline_of({corner(0, 0), corner(40, 0), corner(40, 40), corner(20, 40), rounded(20, 20, 4), corner(0, 20)});
    REQUIRE(made.outline);
    int clockwise = 0;
    for (const Outline::Edge& edge : made.outline->edges) clockwise += edge.centre && edge.clockwise;
    CHECK(clockwise == 1);
    CHECK(area_mm2(made.outline->region()) == Approx(1200 + (1 - std::numbers::pi / 4) * 16).epsilon(1e-4));
}

TEST_CASE("roundings that meet in the middle of an edge have room, larger ones do not") {
    CHECK(code_of({rounded(0, 0, 10), rounded(20, 0, 10), corner(20, 40), corner(0, 40)}).empty());
    CHECK(code_of({rounded(0, 0, 10.1), rounded(20, 0, 10), corner(20, 40), corner(0, 40)}) == "rounding-without-room");
    const MadeOutline made = outline_of({rounded(0, 0, 15), rounded(20, 0, 10), corner(20, 40), corner(0, 40)});
    REQUIRE(made.faults.size() == 1);
    CHECK(made.faults.front().step == 0);
    CHECK(made.faults.front().wrong.find("25 mm of an edge of 20 mm") != std::string::npos);
    CHECK(made.faults.front().mend.find("at most 12 mm") != std::string::npos);
    CHECK(code_of({corner(0, 0), rounded(20, 0, -1), corner(20, 40)}) == "rounding-without-room");
    CHECK(code_of({corner(0, 0), arc(10, 5, 20, 0), rounded(20, 40, 3), corner(0, 40)}).empty());
    CHECK(code_of({rounded(0, 0, 3), arc(10, 5, 20, 0), corner(20, 40), corner(0, 40)}) == "rounding-without-room");
}

TEST_CASE("an arc needs three points beside each other") {
    CHECK(code_of({corner(0, 0), arc(10, 0, 20, 0), corner(20, 40)}) == "arc-on-a-line");
    CHECK(code_of({corner(0, 0), arc(10, 0.004, 20, 0), corner(20, 40)}) == "arc-on-a-line");
    CHECK(code_of({corner(0, 0), arc(10, -0.02, 20, 0), corner(20, 40)}).empty());
    const MadeOutline made = outline_of({corner(0, 40), corner(0, 0), arc(5, 5, 5, 5), corner(40, 40)});
    REQUIRE(made.faults.size() == 1);
    CHECK(made.faults.front().step == 2);
}

TEST_CASE("an outline that crosses, touches or runs back on itself is told") {
    CHECK(code_of({corner(0, 0), corner(40, 40), corner(40, 0), corner(0, 40)}) == "outline-crosses-itself");
    CHECK(code_of({corner(0, 0), corner(40, 0), corner(40, 40), corner(20, 0), corner(0, 40)}) == "outline-crosses-itself");
    CHECK(code_of({corner(0, 0), corner(40, 0), corner(60, 0), corner(40, 0), corner(40, 40)}) == "outline-crosses-itself");
    // A thumb notch that is deeper than its panel.
    CHECK(code_of({corner(0, 0), corner(60, 0), corner(60, 8), corner(40, 8), arc(30, -2, 20, 8), corner(0, 8)}) == "outline-crosses-itself");
    CHECK(code_of({corner(0, 0), corner(60, 0), corner(60, 18), corner(40, 18), arc(30, 8, 20, 18), corner(0, 18)}).empty());
}

TEST_CASE("an outline that holds nothing is told") {
    CHECK(code_of({corner(0, 0), corner(10, 0), corner(10, 0.004)}) != "");
    CHECK(code_of({corner(0, 0), corner(0.2, 0), corner(0.2, 0.2), corner(0, 0.2)}) == "outline-holds-nothing");
    CHECK(code_of({corner(3, 3), corner(3, 3), corner(3, 3)}) == "outline-holds-nothing");
    CHECK(code_of({}) == "outline-holds-nothing");
}

TEST_CASE("steps without length vanish, closing ones too") {
    const MadeOutline made = outline_of({corner(0, 0), corner(40, 0), corner(40, 0), corner(40, 30), corner(0, 30), corner(0, 0)});
    REQUIRE(made.outline);
    CHECK(made.outline->edges.size() == 4);
    const MadeOutline closed_by_arc = outline_of({corner(0, 0), corner(40, 0), corner(40, 30), corner(0, 30), arc(-5, 15, 0, 0)});
    REQUIRE(closed_by_arc.outline);
    CHECK(closed_by_arc.outline->edges.size() == 4);
    CHECK(closed_by_arc.outline->edges.back().to == at(0, 0));
}

TEST_CASE("chords leave their arc by no more than the room's word, and are the same both ways") {
    for (const double radius : {0.5, 3.0, 12.0, 40.0, 300.0}) {
        const Outline::Edge edge{at(0, radius), at(0, 0), false};
        Ring ring{at(radius, 0)};
        add_chords(ring, ring.front(), edge);
        double worst = 0;
        for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
            const double x = (ring[i].x + ring[i + 1].x).in_mm() / 2, y = (ring[i].y + ring[i + 1].y).in_mm() / 2;
            worst = std::max(worst, radius - std::hypot(x, y));
        }
        CHECK(worst <= chord_error.in_mm() + 1e-4);
        CHECK(worst > chord_error.in_mm() / 4);  // nor are there many more than it takes
        Ring back{at(0, radius)};
        add_chords(back, back.front(), {at(radius, 0), at(0, 0), true});
        std::reverse(back.begin(), back.end());
        CHECK(back == ring);
    }
}

TEST_CASE("an outline the other way round is the same area") {
    const MadeOutline made = outline_of({rounded(0, 0, 6), corner(50, 0), arc(60, 15, 50, 30), corner(0, 30)});
    REQUIRE(made.outline);
    CHECK(area_mm2(reversed(*made.outline).region()) == Approx(-area_mm2(made.outline->region())));
    CHECK(reversed(reversed(*made.outline)).region() == made.outline->region());
}

}  // namespace qw::parts::outline_tests
