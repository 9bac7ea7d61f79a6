// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fit.h"

#include "nets.h"

#include <catch2/catch.hpp>

namespace qw::parts::fit_tests {

namespace {

kit::PartRules rules() {
    kit::PartRules r;
    r.clearance = Length::mm(2);
    r.least_clearance = Length::mm(1);
    return r;
}

/// A pocket that is open at the top only: its front is folded up, and its sides are glued without taking room: no tabs.
nets::Draft pocket_of(double width, double depth, double scale, UnitSystem system = UnitSystem::metric) {
    nets::Draft d;
    d.name = "pocket";
    d.scale = scale;
    d.system = system;
    d.panels = {{"back", nets::box(0, 0, width, depth + 20)}, {"front", nets::box(0, -depth, width, 0)}};
    d.folds = {{{"front"}}};
    d.pockets = {{"card", "front", "back", 0, false, -1}};
    return d;
}

Contents bought(double width, double height) { return {"Index card", {Length::mm(width), Length::mm(height)}, false, 1}; }
Contents printed(double width, double height, double scale) { return {"Tag", {Length::mm(width) * scale, Length::mm(height) * scale}, true, scale}; }

Findings goes_in(const nets::Draft& draft, const Contents& contents) {
    const nets::Built built = nets::build(draft);
    return check_goes_in(built.net, fold(built.net), contents, rules());
}

PocketRoom room(const nets::Draft& draft, std::size_t pocket = 0) {
    const nets::Built built = nets::build(draft);
    return room_of(built.net, fold(built.net), built.net.pockets[pocket]);
}

bool near(PocketRoom room, double width, double depth) {
    UNSCOPED_INFO(room.width.in_mm() << " x " << room.depth.in_mm());
    return room.width.in_mm() == Approx(width).margin(0.01) && room.depth.in_mm() == Approx(depth).margin(0.01);
}

}  // namespace

TEST_CASE("a pocket of 80 mm at 94 % is 75.2 mm wide and refuses a card of 3 in") {
    const nets::Draft draft = pocket_of(80, 60, 0.94);
    CHECK(room(draft).width == Length::mm(75.2));
    const Findings findings = goes_in(draft, bought(76.2, 127));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].rule == "part-goes-in");
    CHECK(findings[0].measured == "75.2 mm");
    CHECK(findings[0].limit == "78.2 mm");
    CHECK(findings[0].message == "'Index card' is 76.2 mm wide and needs 2 mm beside it; the pocket 'card' has 75.2 mm, 3 mm too little");
    // (76.2 + 2) / 80 = 97.75 %
    CHECK(findings[0].mend == "print the pocket 'card' at 98 % or more, or make it larger");
    CHECK(findings[0].file == "pipeline/parts/pocket.yaml");
    CHECK(findings[0].line == 500);
}

TEST_CASE("it goes in from 97.75 % on, and not before") {
    CHECK(smallest_scale(Length::mm(80), Length::mm(76.2), Length::mm(2)).value() == Approx(0.9775));
    CHECK(goes_in(pocket_of(80, 60, 0.9774), bought(76.2, 127)).size() == 1);
    CHECK(goes_in(pocket_of(80, 60, 0.9775), bought(76.2, 127)).empty());
    CHECK(goes_in(pocket_of(80, 60, 0.98), bought(76.2, 127)).empty());
    CHECK(goes_in(pocket_of(80, 60, 0.97), bought(76.2, 127)).size() == 1);
}

TEST_CASE("scales outside 30 to 103 % are none") {
    CHECK_FALSE(smallest_scale(Length::mm(75), Length::mm(76.2), Length::mm(2)));
    CHECK(smallest_scale(Length::mm(78.2 / 1.03), Length::mm(76.2), Length::mm(1.999)).has_value());
    CHECK(smallest_scale(Length::mm(400), Length::mm(76.2), Length::mm(2)).value() == 0.30);
    CHECK_FALSE(smallest_scale(Length(), Length::mm(76.2), Length::mm(2)));
    const Findings findings = goes_in(pocket_of(75, 60, 1), bought(76.2, 127));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].mend.find("goes in at no print scale from 30 % to 103 %") != std::string::npos);
}

TEST_CASE("paper in paper shrinks with it, down to the least clearance") {
    // 40 mm in 42.5 mm: at 100 % 2.5 mm where 2 mm are asked; at 40 % 1 mm is left, the least; at 39 % less than that.
    CHECK(goes_in(pocket_of(42.5, 60, 1), printed(40, 50, 1)).empty());
    CHECK(goes_in(pocket_of(42.5, 60, 0.4), printed(40, 50, 0.4)).empty());
    const Findings findings = goes_in(pocket_of(42.5, 60, 0.39), printed(40, 50, 0.39));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].mend.find("print both at 40 % or more") == 0);
    // 1.9 mm at full size is too little at every scale.
    const Findings never = goes_in(pocket_of(41.9, 60, 1), printed(40, 50, 1));
    REQUIRE(never.size() == 1);
    CHECK(never[0].mend.find("at no print scale") != std::string::npos);
    // A tag that was printed larger than its pocket: both at one scale would do.
    const Findings mixed = goes_in(pocket_of(42.5, 60, 0.9), printed(40, 50, 1));
    REQUIRE(mixed.size() == 1);
    CHECK(mixed[0].measured == "38.25 mm");
    CHECK(mixed[0].mend.find("print both at 40 % or more") == 0);
}

TEST_CASE("what goes into a pocket that closes has to lie inside its back panel") {
    nets::Draft draft = pocket_of(80, 60, 1);  // the back is 80 mm high
    CHECK(goes_in(draft, bought(70, 300)).empty());
    draft.pockets[0].closes = true;
    CHECK(goes_in(draft, bought(70, 78)).empty());
    const Findings findings = goes_in(draft, bought(70, 79));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].message.find("is 79 mm high and needs 2 mm beside it; the pocket 'card' has 80 mm, 1 mm too little") != std::string::npos);
    CHECK(findings[0].mend.find("at 102 % or more") != std::string::npos);  // 81 / 80 = 101.25 %
    CHECK(goes_in(draft, bought(78, 78)).empty());
    CHECK(goes_in(draft, bought(78.1, 78)).size() == 1);
}

TEST_CASE("clipped corners of the back take from the height of what is wide") {
    nets::Draft draft = pocket_of(80, 60, 1);
    draft.pockets[0].closes = true;
    draft.panels[0].steps = {nets::corner(0, 0), nets::corner(80, 0), nets::corner(80, 70), nets::corner(70, 80), nets::corner(10, 80), nets::corner(0, 70)};
    CHECK(goes_in(draft, bought(78, 68)).empty());       // as wide as the pocket: up to where the corners begin
    CHECK(goes_in(draft, bought(78, 68.1)).size() == 1);
    CHECK(goes_in(draft, bought(58, 78)).empty());       // between the corners: up to the top
    CHECK(goes_in(draft, bought(58.2, 78)).size() == 1);
    CHECK(goes_in(draft, bought(68, 73)).empty());       // 5 mm of each corner
    CHECK(goes_in(draft, bought(68, 73.1)).size() == 1);
}

TEST_CASE("inch papers are told in inches and millimetres") {
    const Findings findings = goes_in(pocket_of(76.2, 60, 1, UnitSystem::us), bought(76.2, 127));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].measured == "3 in (76.2 mm)");
    CHECK(findings[0].limit == "3 5/64 in (78.2 mm)");
}

TEST_CASE("the rooms of the pockets of the nets") {
    // What goes in lies over the tabs: they are glued to one wall only.
    CHECK(near(room(nets::trifold_pocket(), 0), 84, 64));
    CHECK(near(room(nets::trifold_pocket(), 1), 84, 64));
    CHECK(near(room(nets::trifold_pocket(), 2), 82.5, 64));
    CHECK(near(room(nets::library_card_pocket()), 80, 66));   // the notch takes nothing
    CHECK(near(room(nets::pocket_tag()), 60, 76));
    CHECK(near(room(nets::tuck_pocket()), 70, 92));
    CHECK(near(room(nets::envelope()), 120, 72));
    nets::Draft half = nets::library_card_pocket();
    half.scale = 0.5;
    CHECK(near(room(half), 40, 33));
}

TEST_CASE("a pocket may open to any side") {
    for (int opens = 0; opens < 4; ++opens) {
        nets::Draft d;
        d.name = "turned";
        // The front lies on the side that is opposite to the opening, and is narrower there: what goes in is as wide as
        // the ground. From the other side it would be as wide as the pocket is halfway.
        using nets::corner;
        const std::vector<Step> fronts[] = {{corner(0, 0), corner(10, -50), corner(70, -50), corner(80, 0)},
                                            {corner(80, 0), corner(130, 10), corner(130, 70), corner(80, 80)},
                                            {corner(0, 80), corner(10, 130), corner(70, 130), corner(80, 80)},
                                            {corner(0, 0), corner(-50, 10), corner(-50, 70), corner(0, 80)}};
        d.panels = {{"back", nets::box(0, 0, 80, 80)}, {"front", fronts[opens]}};
        d.folds = {{{"front"}}};
        d.pockets = {{"card", "front", "back", opens, false, -1}};
        INFO(opens);
        CHECK(near(room(d), 80, 50));
    }
}

TEST_CASE("what is glued at the mouth bars what lies deeper; what is glued at the ground ends it") {
    nets::Draft d = pocket_of(80, 60, 1);
    d.panels.push_back({"tab", {nets::corner(80, -44), nets::corner(90, -46), nets::corner(90, -56), nets::corner(80, -58)}});
    d.folds = {{{"tab"}}, {{"front", "tab"}}};
    d.glue = {{"tab", "back"}};
    CHECK(near(room(d), 80, 60));      // there is still a way between the tab and the front
    d.glue.push_back({"tab", "front"});
    CHECK(near(room(d), 70, 60));
    d.panels[2].steps = {nets::corner(80, -2), nets::corner(90, -4), nets::corner(90, -14), nets::corner(80, -16)};
    CHECK(near(room(d), 80, 60));      // halfway down it is as wide as ever; on the rest of the ground there is room
    d.panels[2].steps = {nets::corner(80, -1), nets::corner(130, -1), nets::corner(130, -14), nets::corner(80, -16)};
    const PocketRoom left = room(d);   // 50 of 80 mm are glued up to 14 … 16 mm, slanted
    CHECK(left.width.in_mm() == Approx(80));
    CHECK(left.depth.in_mm() > 44);
    CHECK(left.depth.in_mm() < 46);
}

TEST_CASE("a pocket whose walls do not lie on each other has no room") {
    nets::Draft d = pocket_of(80, 60, 1);
    d.folds.clear();
    CHECK(near(room(d), 0, 0));
    const Findings findings = goes_in(d, bought(76.2, 127));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].message.find("has no room") != std::string::npos);
}

TEST_CASE("the closed part lies on what it is glued to, or the scale at which it would is told") {
    const nets::Built built = nets::build(nets::trifold_pocket());  // 84 x 120 mm closed
    const Folded folded = fold(built.net);
    CHECK(check_goes_on(built.net, folded, "Page", {Length::mm(84), Length::mm(120)}, false).empty());
    const Findings findings = check_goes_on(built.net, folded, "Page", {Length::mm(100), Length::mm(110)}, false);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].rule == "part-goes-on");
    CHECK(findings[0].measured == "84 x 120 mm");
    CHECK(findings[0].limit == "100 x 110 mm");
    CHECK(findings[0].mend == "print it at 91 % or less, or make it smaller");  // 110 / 120 = 91.67 %
    CHECK(check_goes_on(built.net, folded, "Page", {Length::mm(100), Length::mm(110)}, true)[0].mend == "make it smaller");
}

}  // namespace qw::parts::fit_tests
