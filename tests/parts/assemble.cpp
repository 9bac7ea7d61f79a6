// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/assemble.h"

#include "nets.h"
#include "parts/arcs.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace qw::parts::assemble_tests {

namespace {

double panels_area(const Net& net) {
    double sum = 0;
    for (const Panel& panel : net.panels) sum += area_mm2(panel.region);
    return sum;
}

int arcs_in(const Outline& outline) {
    int arcs = 0;
    for (const Outline::Edge& edge : outline.edges) arcs += edge.centre.has_value();
    return arcs;
}

}  // namespace

TEST_CASE("the cut line goes round all panels, and holds what they hold") {
    for (const nets::Draft& draft : nets::all()) {
        INFO(draft.name);
        const nets::Built built = nets::build(draft);
        CHECK(faults_of(built.net.panels).empty());
        REQUIRE(built.net.cut.size() == 1);
        CHECK(area_mm2(built.net.whole) == Approx(panels_area(built.net)).epsilon(1e-6));
        Point from = built.net.cut[0].start;
        for (const Outline::Edge& edge : built.net.cut[0].edges) {
            CHECK(edge.to != from);
            from = edge.to;
        }
        CHECK(from == built.net.cut[0].start);
    }
}

TEST_CASE("edges that two panels share are no cut lines, and straight ones run through") {
    // 252 x 184 mm less 1.5 mm, and two tabs whose hinges begin and end 1 mm inside the strip: top, two sides that go on
    // from panel to strip as far as the tab, the rest of the strip's sides, its bottom, and three edges a tab.
    const nets::Built built = nets::build(nets::trifold_pocket());
    CHECK(built.net.cut[0].edges.size() == 1 + 2 + 2 + 1 + 6);
    CHECK(bounds(built.net.whole) == Rect{Length::mm(-10), Length::mm(-64), Length::mm(260.5), Length::mm(120)});
}

TEST_CASE("arcs of the cut line stay arcs") {
    CHECK(arcs_in(nets::build(nets::library_card_pocket()).net.cut[0]) == 3);  // two corners, one thumb notch
    CHECK(arcs_in(nets::build(nets::envelope()).net.cut[0]) == 4);
    CHECK(arcs_in(nets::build(nets::pocket_tag()).net.cut[0]) == 0);
    const Outline cut = nets::build(nets::library_card_pocket()).net.cut[0];
    Point from = cut.start;
    double notch = 0;
    for (const Outline::Edge& edge : cut.edges) {
        if (edge.centre && edge.clockwise) notch += sweep_of(from, edge);
        from = edge.to;
    }
    CHECK(notch == Approx(M_PI));      // a half circle of 11 mm
}

TEST_CASE("panels that share an arc are one piece, and its inside is no cut") {
    nets::Draft d;
    d.panels = {{"plate", {nets::corner(0, 0), nets::corner(60, 0), nets::corner(60, 20), nets::corner(40, 20), nets::arc(30, 10, 20, 20), nets::corner(0, 20)}},
                {"disc", {nets::corner(40, 20), nets::arc(30, 30, 20, 20), nets::arc(30, 10, 40, 20)}}};
    const nets::Built built = nets::build(d);
    CHECK(faults_of(built.net.panels).empty());
    REQUIRE(built.net.cut.size() == 1);
    CHECK(arcs_in(built.net.cut[0]) == 1);
    CHECK(area_mm2(built.net.whole) == Approx(1200 + M_PI * 50).epsilon(1e-3));
}

TEST_CASE("a ring of panels has an inner cut line that runs clockwise") {
    nets::Draft d;
    d.panels = {{"south", nets::box(0, 0, 60, 10)}, {"east", nets::box(50, 10, 60, 50)}, {"north", nets::box(0, 50, 60, 60)}, {"west", nets::box(0, 10, 10, 50)}};
    const nets::Built built = nets::build(d);
    CHECK(faults_of(built.net.panels).empty());
    REQUIRE(built.net.cut.size() == 2);
    CHECK(area_mm2(built.net.cut[0].region()) == Approx(3600));
    CHECK(area_mm2(built.net.cut[1].region()) == Approx(-1600));
    CHECK(built.net.cut[0].edges.size() == 4);
    CHECK(area_mm2(built.net.whole) == Approx(2000));
}

TEST_CASE("edges that miss each other by a few micrometres are shared") {
    nets::Draft d;
    d.panels = {{"a", nets::box(0, 0, 60, 40)}, {"b", {nets::corner(60.004, 0), nets::corner(90, 0), nets::corner(90, 40), nets::corner(59.997, 40)}}};
    const nets::Built built = nets::build(d);
    CHECK(faults_of(built.net.panels).empty());
    CHECK(built.net.cut.size() == 1);
    d.panels[1].steps = nets::box(60.02, 0, 90, 40);
    const std::vector<PanelsFault> faults = faults_of(nets::build(d).net.panels);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].code == "net-in-pieces");
    CHECK(faults[0].panels.front() == 1);
}

TEST_CASE("panels that overlap, that lie apart or touch in a point are told, each once") {
    nets::Draft d;
    d.panels = {{"a", nets::box(0, 0, 60, 40)}, {"b", nets::box(59, 0, 90, 40)}};
    std::vector<PanelsFault> faults = faults_of(nets::build(d).net.panels);
    REQUIRE(faults.size() == 2);
    CHECK(faults[0].code == "panels-overlap");
    CHECK(faults[0].wrong.find("40.0 square mm") != std::string::npos);
    CHECK(faults[1].code == "net-in-pieces");

    d.panels = {{"a", nets::box(0, 0, 60, 40)}, {"b", nets::box(60, 40, 90, 80)}, {"c", nets::box(90, 40, 120, 80)}, {"d", nets::box(200, 0, 210, 10)}};
    const nets::Built touching = nets::build(d);
    faults = faults_of(touching.net.panels);
    REQUIRE(faults.size() == 2);       // b and c hold together: one piece, one fault
    CHECK(faults[0].panels.front() == 1);
    CHECK(faults[1].panels.front() == 3);
    CHECK(touching.net.cut.size() == 3);  // where panels touch in a point each piece has its own line
}

TEST_CASE("a face's frame goes round its panels") {
    const nets::Built built = nets::build(nets::trifold_pocket());
    CHECK(built.net.faces[3].frame == Rect{Length::mm(0), Length::mm(0), Length::mm(250.5), Length::mm(120)});
}

}  // namespace qw::parts::assemble_tests
