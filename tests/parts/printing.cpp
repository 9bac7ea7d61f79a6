// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/printing.h"

#include "nets.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace qw::parts::printing_tests {

namespace {

struct Printed {
    nets::Built built;
    Folded folded;
    std::vector<FaceArea> front, back;
};

Printed printed_of(const nets::Draft& draft, double outward, double over_fold) {
    Printed p{nets::build(draft), {}, {}, {}};
    p.folded = fold(p.built.net);
    const Bleeds bleeds{Length::mm(outward), Length::mm(over_fold)};
    p.front = printed(p.built.net, p.folded, Side::front, bleeds);
    p.back = printed(p.built.net, p.folded, Side::back, bleeds);
    return p;
}

Point pt(double x, double y) { return {Length::mm(x), Length::mm(y)}; }

/// The slanted tabs of the trifold pocket: 62 and 54 mm long, 10 mm wide.
constexpr double tab_mm2 = (62.0 + 54.0) / 2 * 10;

const FaceArea& area(const Printed& p, const std::string& name) {
    for (const std::vector<FaceArea>* side : {&p.front, &p.back})
        for (const FaceArea& one : *side)
            if (p.built.net.faces[one.face].name == name) return one;
    throw std::logic_error("no face " + name);
}

}  // namespace

TEST_CASE("glued areas are those of the tabs, on both of the sides that touch") {
    const nets::Built built = nets::build(nets::trifold_pocket());
    const Folded folded = fold(built.net);
    const std::size_t left = 0, tab = 6;
    CHECK(area_mm2(glued(built.net, folded, tab, Side::back)) == Approx(tab_mm2).epsilon(1e-4));
    CHECK(glued(built.net, folded, tab, Side::front).empty());
    const Region on = glued(built.net, folded, left, Side::front);
    CHECK(area_mm2(on) == Approx(tab_mm2).epsilon(1e-4));
    CHECK(glued(built.net, folded, left, Side::back).empty());
    const Rect box = bounds(on);
    CHECK(box.left.in_mm() == Approx(0).margin(0.001));
    CHECK(box.right.in_mm() == Approx(10).margin(0.001));
    CHECK(box.bottom.in_mm() == Approx(1).margin(0.001));
    CHECK(box.top.in_mm() == Approx(63).margin(0.001));
}

TEST_CASE("what a glued strip covers of the inside is hidden, by hand: 250.5 x 64 mm of 250.5 x 120 mm") {
    const nets::Built built = nets::build(nets::trifold_pocket());
    const Region area = hidden(built.net, fold(built.net), Side::front);
    CHECK(area_mm2(area) == Approx(250.5 * 64).epsilon(1e-5));
    const Rect box = bounds(area);
    CHECK(box.bottom.in_mm() == Approx(0).margin(0.001));
    CHECK(box.top.in_mm() == Approx(64).margin(0.001));
    // On the back nothing is glued over: the flap and the cover can be opened.
    CHECK(hidden(built.net, fold(built.net), Side::back).empty());
}

TEST_CASE("without glue, or with a front that can be lifted, nothing is hidden") {
    nets::Draft draft = nets::trifold_pocket();
    draft.glue.clear();
    CHECK(hidden(nets::build(draft).net, fold(nets::build(draft).net), Side::front).empty());
    // One tab holds its own pocket, and through the folds between them the others.
    draft = nets::trifold_pocket();
    draft.glue.pop_back();
    CHECK(area_mm2(hidden(nets::build(draft).net, fold(nets::build(draft).net), Side::front)) == Approx(250.5 * 64).epsilon(1e-5));
    // A flap that is closed last and not glued hides nothing.
    draft = nets::envelope();
    draft.face("lining").after = 3;
    draft.face("lining").panels = {"body"};
    const nets::Built built = nets::build(draft);
    const Region area = hidden(built.net, fold(built.net), Side::front);
    CHECK(area_mm2(area) == Approx(120 * 66 + 108 * 6 + 6 * 6 - 2 * 3 * 3 * (std::tan(std::numbers::pi / 8) - std::numbers::pi / 8)).epsilon(1e-3));
    CHECK(bounds(area).top.in_mm() == Approx(72).margin(0.001));
}

TEST_CASE("the saving of the trifold's inside, by hand") {
    // Picture and bleed of 3 mm: 250.5 x 120 mm, 3 mm on three sides, two round corners at the top; on the fold to the
    // strip 1 mm. At the lower corners the bleed ends straight: outside lies the strip's own edge.
    nets::Draft draft = nets::trifold_pocket();
    draft.panel("tab-left").steps = {nets::corner(0, -1), nets::corner(-10, -5), nets::corner(-10, -50), nets::corner(0, -54)};
    draft.panel("tab-right").steps = {nets::corner(250.5, -1), nets::corner(260.5, -5), nets::corner(260.5, -50), nets::corner(250.5, -54)};
    const Printed p = printed_of(draft, 3, 1);
    const FaceArea& inside = area(p, "inside");
    const double corner = std::numbers::pi * 9 / 4;
    // Below y = 0 a quarter of a circle beside the strip belongs to the bleed as well.
    const double full = 250.5 * 120 + 2 * 3 * 120 + 250.5 * 3 + 4 * corner + 250.5 * 1;
    // What is printed: from 3 mm below the strip's upper edge to the top; its bleed at the sides begins a quarter of a
    // circle lower. The tabs are glued deeper than that.
    const double height = 120 - 64 + 3;
    const double ink = 250.5 * height + 2 * 3 * height + 250.5 * 3 + 4 * corner;
    CHECK(area_mm2(inside.ink) == Approx(ink).epsilon(1e-3));
    CHECK(inside.saved == Approx(1 - ink / full).margin(2e-3));
    CHECK(inside.saved == Approx(0.50).margin(0.005));  // half of the ink
    CHECK(inside.frame == Rect{Length::mm(0), Length::mm(0), Length::mm(250.5), Length::mm(120)});
    CHECK(inside.canvas == inside.frame.inset(Length::mm(-3)));
    CHECK(holds(inside.ink, pt(125, 62)));
    CHECK_FALSE(holds(inside.ink, pt(125, 60)));
    CHECK(holds(inside.ink, pt(-2.5, 100)));
    CHECK_FALSE(holds(inside.ink, pt(-3.5, 100)));
}

TEST_CASE("a face that nothing covers keeps its panels and bleed whole") {
    const Printed p = printed_of(nets::plain_tag(), 2, 1);
    REQUIRE(p.front.size() == 1);
    REQUIRE(p.back.size() == 1);
    CHECK(p.front[0].saved == Approx(0).margin(1e-6));
    CHECK(area_mm2(p.front[0].ink) == Approx(area_mm2(grown(p.built.net.whole, Length::mm(2)))).epsilon(1e-4));
    CHECK(area_mm2(footprint(p.built.net, p.front, p.back)) == Approx(area_mm2(p.front[0].ink)).epsilon(1e-4));
}

TEST_CASE("a picture reaches over a fold by its own measure, and not onto another face") {
    const Printed p = printed_of(nets::envelope(), 3, 1.5);
    const FaceArea& front = area(p, "front");  // beside the body, which shows the address
    CHECK_FALSE(holds(front.ink, pt(60, 0.2)));
    CHECK(holds(front.ink, pt(60, -0.2)));
    CHECK(holds(front.ink, pt(60, -74)));
    const FaceArea& address = area(p, "address");
    CHECK(holds(address.ink, pt(-1.4, 30)));   // onto the side flap, though it is glued there
    CHECK_FALSE(holds(address.ink, pt(-1.6, 30)));
    CHECK(holds(address.ink, pt(-2.9, 70)));   // beyond the cut line
    CHECK_FALSE(holds(address.ink, pt(-3.1, 70)));
}

TEST_CASE("areas of faces of one side do not overlap, and what lies straight beside a panel is its own") {
    for (const nets::Draft& draft : nets::all()) {
        INFO(draft.name);
        const Printed p = printed_of(draft, 3, 1);
        for (const std::vector<FaceArea>* side : {&p.front, &p.back})
            for (std::size_t i = 0; i < side->size(); ++i)
                for (std::size_t j = 0; j < i; ++j) CHECK(area_mm2(shared((*side)[i].ink, (*side)[j].ink)) < 0.01);
        for (const std::vector<FaceArea>* side : {&p.front, &p.back})
            for (const FaceArea& one : *side) {
                CHECK(one.saved >= 0);
                CHECK(one.saved < 0.7);
                const Rect box = bounds(one.ink);
                CHECK(one.canvas.holds(box, Length::mm(0.001)));
            }
    }
    const Printed p = printed_of(nets::trifold_pocket(), 3, 1);
    CHECK(holds(area(p, "cover").ink, pt(83.9, 122.5)));       // the cover and the back meet at x = 84
    CHECK_FALSE(holds(area(p, "cover").ink, pt(84.1, 122.5)));
    CHECK(holds(area(p, "back").ink, pt(84.1, 122.5)));
}

TEST_CASE("nothing is printed where a tab is glued, nor where the template says so") {
    nets::Draft draft = nets::library_card_pocket();
    draft.faces.push_back({"tab", Side::front, {"tab-left"}, 0, 0, true});
    Printed p = printed_of(draft, 2, 1);
    // Folded with the front, the tab's own front lies on the back panel and is glued to it; its back stays as it is.
    CHECK(area(p, "tab").saved == Approx(1));
    CHECK(area(p, "tab").ink.empty());
    draft.faces.back().side = Side::back;
    p = printed_of(draft, 2, 1);
    CHECK(area(p, "tab").saved == Approx(0).margin(1e-6));

    nets::Built built = nets::build(nets::plain_tag());
    built.net.no_ink.push_back({"stamp", Side::back, {{pt(10, 10), pt(30, 10), pt(30, 40), pt(10, 40)}}});
    const Folded folded = fold(built.net);
    const std::vector<FaceArea> back = printed(built.net, folded, Side::back, {Length::mm(2), Length::mm(1)});
    CHECK_FALSE(holds(back[0].ink, pt(20, 20)));
    CHECK(holds(back[0].ink, pt(9.9, 20)));
    CHECK(area_mm2(back[0].ink) == Approx(area_mm2(grown(built.net.whole, Length::mm(2))) - 600).epsilon(1e-4));
    CHECK(back[0].saved == Approx(600 / area_mm2(grown(built.net.whole, Length::mm(2)))).epsilon(1e-3));
    CHECK(printed(built.net, folded, Side::front, {Length::mm(2), Length::mm(1)})[0].saved == Approx(0).margin(1e-6));
}

TEST_CASE("the footprint holds the net, its bleed on both sides, and no more") {
    const Printed p = printed_of(nets::trifold_pocket(), 3, 1);
    const Region all = footprint(p.built.net, p.front, p.back);
    CHECK(area_mm2(without(p.built.net.whole, all)) < 0.01);
    for (const FaceArea& one : p.front) CHECK(area_mm2(without(one.ink, all)) < 0.01);
    for (const FaceArea& one : p.back) CHECK(area_mm2(without(one.ink, all)) < 0.01);
    CHECK(area_mm2(without(all, grown(p.built.net.whole, Length::mm(3)))) < 0.01);
}

}  // namespace qw::parts::printing_tests
