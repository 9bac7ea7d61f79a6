// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot be folded, or does not give the part that was meant, and what is then told.
#include "folded_nets.h"
#include "parts/fold_move.h"
#include "parts/folding.h"
#include "parts/lying.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::parts::folding_tests {

TEST_CASE("three panels of 99 mm do not: the inner one ends on the fold") {
    const Made m = made(nets::letter_fold(99, 99, 99));
    REQUIRE(rules_of(m.folded.findings) == std::vector<std::string>{"part-inner-panel"});
    const Finding& finding = m.folded.findings.front();
    CHECK(finding.measured == "0 mm");
    CHECK(finding.limit == "0.32 mm");  // pi/4 · 2 · 0.2 mm = 0.314 mm, rounded up
    CHECK(finding.message == "'p3' ends 0 mm before the fold between 'p1' and 'p2'; going round one layer of 0.2 mm, the fold takes 0.32 mm");
    CHECK(finding.mend == "make 'p3' end at least 0.32 mm earlier, or take thinner paper");
    CHECK(finding.file == "pipeline/parts/row.yaml");
    CHECK(finding.line == 201);        // the second fold
    CHECK(finding.level == Level::error);
}

TEST_CASE("an inner panel that is longer than the outer one is caught in the fold") {
    const Made m = made(nets::letter_fold(99, 98, 99));
    CHECK(rules_of(m.folded.findings) == std::vector<std::string>{"part-passes-through"});
    CHECK(m.folded.states.size() == 2);
    CHECK(m.folded.findings.front().message == "'p3' lies across the line on which 'p1' is folded, and the fold would close round it");
}

TEST_CASE("two folds that are swapped are found") {
    struct Swap { nets::Draft draft; std::size_t a, b; std::string rule; };
    const Swap swaps[] = {{nets::trifold_pocket(), 0, 2, "part-tab-uncovered"}, {nets::trifold_pocket(), 1, 2, "part-tab-uncovered"},
                          {nets::trifold_pocket(), 2, 3, "part-layers"},        {nets::trifold_pocket(), 3, 4, "part-inner-panel"},
                          {nets::trifold_pocket(), 2, 4, "part-layers"},        {nets::envelope(), 0, 2, "part-face-hidden"},
                          {nets::envelope(), 1, 2, "part-face-hidden"},         {nets::envelope(), 2, 3, "part-layers"},
                          {nets::library_card_pocket(), 0, 2, "part-tab-uncovered"}, {nets::library_card_pocket(), 1, 2, "part-tab-uncovered"},
                          {nets::pocket_tag(), 0, 2, "part-tab-uncovered"},     {nets::pocket_tag(), 1, 2, "part-tab-uncovered"},
                          {nets::tuck_pocket(), 0, 3, "part-tab-uncovered"},    {nets::tuck_pocket(), 1, 3, "part-tab-uncovered"},
                          {nets::tuck_pocket(), 2, 3, "part-layers"}};
    for (const Swap& swap : swaps) {
        nets::Draft draft = swap.draft;
        std::swap(draft.folds[swap.a], draft.folds[swap.b]);
        INFO(draft.name << " " << swap.a << " " << swap.b);
        CHECK(finds(draft, swap.rule));
    }
}

TEST_CASE("each fold that goes the other way is found") {
    for (const nets::Draft& draft : nets::all())
        for (std::size_t i = 0; i < draft.folds.size(); ++i) {
            nets::Draft changed = draft;
            changed.folds[i].valley = !changed.folds[i].valley;
            INFO(draft.name << " fold " << i + 1);
            CHECK_FALSE(made(changed).folded.findings.empty());
        }
}

TEST_CASE("each face that is turned, or lies on the other side, is found") {
    for (const nets::Draft& draft : nets::all())
        for (std::size_t i = 0; i < draft.faces.size(); ++i) {
            INFO(draft.name << " face " << draft.faces[i].name);
            for (int turn = 1; turn < 4; ++turn) {
                nets::Draft changed = draft;
                changed.faces[i].head = (changed.faces[i].head + turn) % 4;
                const Made m = made(changed);
                REQUIRE(rules_of(m.folded.findings) == std::vector<std::string>{"part-face-turned"});
                const char* right[] = {"'head: up'", "'head: left'", "'head: down'", "'head: right'"};
                CHECK(m.folded.findings[0].mend.find(right[draft.faces[i].head]) != std::string::npos);
                CHECK(m.folded.findings[0].line == 400 + static_cast<int>(i));
                CHECK(m.folded.findings[0].measured == (turn == 2 ? "upside down" : turn == 1 ? "turned a quarter to the left" : "turned a quarter to the right"));
            }
            nets::Draft changed = draft;
            changed.faces[i].side = changed.faces[i].side == Side::front ? Side::back : Side::front;
            CHECK(finds(changed, "part-face-hidden"));
            changed = draft;
            changed.faces[i].from_front = !changed.faces[i].from_front;
            CHECK(finds(changed, "part-face-hidden"));
        }
}

TEST_CASE("a face that is covered when it is looked at is found, with what covers it") {
    nets::Draft draft = nets::envelope();
    draft.face("front").after = -1;    // closed, when the flap lies on it
    const Made m = made(draft);
    REQUIRE(rules_of(m.folded.findings) == std::vector<std::string>{"part-face-hidden"});
    CHECK(m.folded.findings[0].message.find("'flap' covers") == 0);
    draft = nets::trifold_pocket();
    draft.face("flap").after = -1;
    CHECK(finds(draft, "part-face-hidden"));
    draft = nets::envelope();          // what the front and the side flaps below it cover of the body is the pocket's own
    draft.face("lining").panels = {"body"};
    draft.face("lining").after = 3;
    draft.pockets.clear();
    CHECK(finds(draft, "part-face-hidden"));
    draft.pockets = nets::envelope().pockets;
    check_quiet(draft);
}

TEST_CASE("a tab that stands out beyond its panel is found") {
    using nets::corner;
    struct Tab { nets::Draft draft; std::string panel; std::vector<Step> steps; };
    const Tab tabs[] = {
        {nets::trifold_pocket(), "tab-left", {corner(0, -1), corner(-10, -5), corner(-10, -123), corner(0, -63)}},
        {nets::trifold_pocket(), "tab-right", {corner(250.5, -1), corner(260.5, -5), corner(260.5, -123), corner(250.5, -63)}},
        {nets::envelope(), "side-left", {corner(0, 2), corner(-16, 10), corner(-16, 76), corner(0, 60)}},
        {nets::envelope(), "side-right", {corner(120, 2), corner(136, 10), corner(136, 76), corner(120, 60)}},
        {nets::library_card_pocket(), "tab-left", {corner(0, -1), corner(-9, -5), corner(-9, -110), corner(0, -64)}},
        {nets::library_card_pocket(), "tab-right", {corner(80, -1), corner(89, -5), corner(89, -110), corner(80, -64)}},
        {nets::pocket_tag(), "tab-side", {corner(120, 11), corner(129, 15), corner(129, 99), corner(120, 74)}},
        {nets::pocket_tag(), "tab-bottom", {corner(61, 0), corner(65, -96), corner(115, -96), corner(119, 0)}},
        {nets::tuck_pocket(), "tab-left", {corner(0, -1), corner(-8, -5), corner(-8, -103), corner(0, -78)}},
        {nets::tuck_pocket(), "tab-right", {corner(70, -1), corner(78, -5), corner(78, -103), corner(70, -78)}}};
    for (const Tab& tab : tabs) {
        nets::Draft draft = tab.draft;
        draft.panel(tab.panel).steps = tab.steps;
        INFO(draft.name << " " << tab.panel);
        CHECK(finds(draft, "part-tab-uncovered"));
    }
    nets::Draft draft = nets::trifold_pocket();
    draft.panel("tab-left").steps = tabs[0].steps;
    const Finding finding = made(draft).folded.findings.front();
    // The edge from (-10, 123) to (0, 63) passes y = 120 at x = -9.5.
    CHECK(finding.message == "Folded, 'tab-left' stands out beyond 'left', which it is glued to, over an area of 0.5 mm by 3 mm");
    CHECK(finding.line == 300);
}

TEST_CASE("a tab that is glued to a panel which it does not reach is found") {
    nets::Draft draft = nets::trifold_pocket();
    draft.glue[0].on = "right";        // two layers of strip lie between
    CHECK(finds(draft, "part-tab-uncovered"));
    draft.glue = {{"tab-left", "tab-right"}};
    const Made m = made(draft);
    REQUIRE(rules_of(m.folded.findings) == std::vector<std::string>{"part-tab-uncovered"});
    CHECK(m.folded.findings[0].message.find("does not lie on") != std::string::npos);
}

TEST_CASE("a fold that leads through a layer is found, and nothing is folded after it") {
    // The flap lies behind the back; the front cannot be folded round it to the back's own front and over again.
    nets::Draft draft = nets::tuck_pocket();
    draft.folds.push_back({{"flap"}, true});  // out again, while the front lies on it
    Made m = made(draft);
    CHECK(rules_of(m.folded.findings).front() == "part-passes-through");
    CHECK(m.folded.states.size() == 5);
    CHECK(m.folded.findings.front().message == "'flap' would go through 'front' on its way over to the front");
    CHECK(m.folded.findings.front().line == 204);

    // The way behind leads through the back.
    draft.folds.back().valley = false;
    m = made(draft);
    CHECK(m.folded.findings.front().message == "'flap' would go through 'back' on its way round to the back");
}

TEST_CASE("a fold line under a panel that lies across it is found") {
    // p3 is folded over p2 and reaches onto p1; p1 folded toward the viewer would crush it, behind it would not.
    nets::Draft draft = nets::row_of({60, 40, 70}, 50, {{{"p3"}}, {{"p1"}}});
    CHECK(finds(draft, "part-passes-through"));
    draft.folds[1].valley = false;
    check_quiet(draft);
}

TEST_CASE("panels in one piece that a fold would tear apart are found") {
    nets::Draft draft = nets::trifold_pocket();
    draft.folds[3].moves = {"right"};  // its strip stays, and holds it below
    Made m = made(draft);
    CHECK(m.folded.findings.front().rule == "part-tears");
    CHECK(m.folded.findings.front().message.find("'right' and 'strip-right' are in one piece") == 0);
    CHECK(m.folded.states.size() == 4);

    draft = nets::trifold_pocket();
    draft.folds[0].moves = {"left", "middle", "right", "strip-left", "strip-middle", "strip-right", "tab-left", "tab-right"};
    m = made(draft);
    CHECK(m.folded.findings.front().rule == "part-tears");
    CHECK(m.folded.findings.front().message.find("has no line") != std::string::npos);

    draft = nets::Draft();
    draft.name = "disc";
    draft.panels = {{"plate", {nets::corner(0, 0), nets::corner(60, 0), nets::corner(60, 20), nets::corner(40, 20), nets::arc(30, 10, 20, 20), nets::corner(0, 20)}},
                    {"disc", {nets::corner(40, 20), nets::arc(30, 30, 20, 20), nets::arc(30, 10, 40, 20)}}};
    draft.folds = {{{"disc"}}};
    CHECK(finds(draft, "part-tears"));
    // The same curve beside straight edges that would fold.
    draft.panels[1].steps = {nets::corner(0, 40), nets::corner(0, 20), nets::corner(20, 20), nets::arc(30, 10, 40, 20), nets::corner(60, 20), nets::corner(60, 40)};
    m = made(draft);
    REQUIRE(rules_of(m.folded.findings) == std::vector<std::string>{"part-tears"});
    CHECK(m.folded.findings[0].message.find("along a curve") != std::string::npos);
}

TEST_CASE("panels that would come to lie over and under one another have no order") {
    CHECK(levels_of({{0, 1, 0}, {-1, 0, 1}, {0, -1, 0}}) == std::vector<int>{2, 1, 0});
    CHECK(levels_of({{0, 0}, {0, 0}}) == std::vector<int>{0, 0});
    CHECK_FALSE(levels_of({{0, 1, -1}, {-1, 0, 1}, {1, -1, 0}}));
    // Both reach across the line. What moves comes over one prong of what stays and under the other.
    Net net;
    const auto box = [](double left, double bottom, double right, double top) { return outline_of(nets::box(left, bottom, right, top)).outline->region(); };
    net.panels.resize(2);
    net.panels[0].title = "moves";
    net.panels[0].region = united({box(-30, 20, 50, 30), box(-30, 5, -20, 20), box(40, 5, 50, 20)});
    net.panels[1].title = "stays";
    net.panels[1].region = united({box(-45, -10, 25, 0), box(-45, 0, -40, 10), box(20, 0, 25, 10)});
    net.folds = {{{0}, true}};
    const FoldMove move = moved_over(net, lying_flat(net.panels), {{0, 0}, {0, 1}, {}}, 0);
    REQUIRE(move.refusals.size() == 1);
    CHECK(move.refusals[0].rule == "part-passes-through");
}

}  // namespace qw::parts::folding_tests
