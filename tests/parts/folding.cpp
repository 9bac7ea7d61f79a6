// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/folding.h"

#include "nets.h"
#include "parts/bend.h"
#include "parts/fold_move.h"
#include "parts/lying.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace qw::parts::folding_tests {

namespace {

struct Made {
    nets::Built built;
    Folded folded;
};

Made made(const nets::Draft& draft) {
    Made m{nets::build(draft), {}};
    m.folded = fold(m.built.net);
    return m;
}

std::vector<std::string> rules_of(const Findings& findings) {
    std::vector<std::string> rules;
    for (const Finding& finding : findings) rules.push_back(finding.rule);
    return rules;
}

bool finds(const nets::Draft& draft, const std::string& rule) {
    const Folded folded = made(draft).folded;
    for (const Finding& f : folded.findings) UNSCOPED_INFO(f.rule << ": " << f.message << " | " << f.mend);
    const std::vector<std::string> rules = rules_of(folded.findings);
    return std::count(rules.begin(), rules.end(), rule) > 0;
}

void check_quiet(const nets::Draft& draft) {
    const Folded folded = made(draft).folded;
    for (const Finding& f : folded.findings) UNSCOPED_INFO(f.rule << ": " << f.message << " | " << f.mend);
    CHECK(folded.findings.empty());
    CHECK(folded.states.size() == draft.folds.size() + 1);
}

nets::Draft in_inches(nets::Draft draft) {
    draft.system = UnitSystem::us;
    return draft;
}

double letter_scale(double caliper) {
    nets::Draft draft = in_inches(nets::letter_fold(3.6875 * 25.4, 3.6875 * 25.4, 3.625 * 25.4));
    draft.scale = 0.5;
    draft.caliper = caliper;
    return made(draft).folded.findings.empty() ? 1 : 0;
}

}  // namespace

TEST_CASE("the six nets fold without findings, at full size and with thin paper at half size") {
    for (nets::Draft draft : nets::all()) {
        INFO(draft.name);
        check_quiet(draft);
        draft.scale = 0.5;
        draft.caliper = 0.1;
        check_quiet(draft);
    }
}

TEST_CASE("99.5, 99.5 and 98 mm fold in a letter fold") {
    check_quiet(nets::letter_fold(99.5, 99.5, 98));
    const Made m = made(nets::letter_fold(99.5, 99.5, 98));
    CHECK(m.folded.size == Size{Length::mm(99.5), Length::mm(100)});
    CHECK(m.folded.most_layers == 3);
    CHECK(m.folded.thickness == Length::mm(0.6));
}

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

TEST_CASE("letter's own chain folds, at half size as far as the caliper goes") {
    check_quiet(in_inches(nets::letter_fold(3.6875 * 25.4, 3.6875 * 25.4, 3.625 * 25.4)));
    // At half size the panel ends 1/32 in = 0.79 mm before the fold, which takes pi/2 calipers: enough up to 0.505 mm.
    CHECK(letter_scale(0.2) == 1);
    CHECK(letter_scale(0.49) == 1);
    CHECK(letter_scale(0.53) == 0);
    nets::Draft draft = in_inches(nets::letter_fold(3.6875 * 25.4, 3.6875 * 25.4, 3.625 * 25.4));
    draft.scale = 0.5;
    draft.caliper = 0.6;
    const Made m = made(draft);
    REQUIRE(m.folded.findings.size() == 1);
    CHECK(m.folded.findings.front().measured == "0.79 mm");  // an inch ruler shows both as 1/32 in
    CHECK(m.folded.findings.front().limit == "0.95 mm");
    draft.caliper = 1.2;
    const Made thick = made(draft);
    REQUIRE(thick.folded.findings.size() == 1);
    CHECK(thick.folded.findings.front().measured == "1/32 in (0.79 mm)");
    CHECK(thick.folded.findings.front().limit == "5/64 in (1.89 mm)");
}

TEST_CASE("what a bend takes grows with the layers in it") {
    CHECK(taken_by_bend(0, Length::mm(0.2)).in_mm() == Approx(0.15708).margin(1e-4));
    CHECK(taken_by_bend(1, Length::mm(0.2)).in_mm() == Approx(0.31416).margin(1e-4));
    CHECK(taken_by_bend(5, Length::mm(0.2)).in_mm() == Approx(0.94248).margin(1e-4));
    // Five layers lie in the outer fold of the trifold pocket: its strip twice, a tab and the inner panel.
    nets::Draft draft = nets::trifold_pocket();
    draft.caliper = 0.31;              // takes 1.461 mm of the 1.5 mm
    check_quiet(draft);
    draft.caliper = 0.33;              // takes 1.555 mm
    CHECK(finds(draft, "part-inner-panel"));
}

TEST_CASE("scores are valleys or mountains as seen on the front, each hinge once") {
    const Made m = made(nets::trifold_pocket());
    REQUIRE(m.folded.scores.size() == 2 + 3 + 2 + 2);
    int valleys = 0;
    for (const ScoreLine& score : m.folded.scores) valleys += score.valley;
    CHECK(valleys == 7);               // the strip's two vertical folds are bent while their front faces away
    const Made card = made(nets::library_card_pocket());
    for (const ScoreLine& score : card.folded.scores) CHECK_FALSE(score.valley);
    const ScoreLine bottom = card.folded.scores.back();
    CHECK(bottom.from.y == Length());
    CHECK(bottom.to.y == Length());
    CHECK(abs(bottom.to.x - bottom.from.x) == Length::mm(80));
    CHECK(bottom.moves == 1);
    CHECK(bottom.stays == 0);
}

TEST_CASE("the closed sizes, layers and thicknesses of the six nets") {
    struct Row { nets::Draft draft; double width, height; int layers; };
    const Row rows[] = {{nets::trifold_pocket(), 84, 120, 7}, {nets::envelope(), 120, 80, 3}, {nets::library_card_pocket(), 80, 104, 3},
                        {nets::pocket_tag(), 60, 100, 3}, {nets::tuck_pocket(), 70, 100, 3}, {nets::plain_tag(), 50, 90, 1}};
    for (const Row& row : rows) {
        INFO(row.draft.name);
        const Folded folded = made(row.draft).folded;
        CHECK(folded.size.width.in_mm() == Approx(row.width).margin(0.001));
        CHECK(folded.size.height.in_mm() == Approx(row.height).margin(0.001));
        CHECK(folded.most_layers == row.layers);
        CHECK(folded.thickness.in_mm() == Approx(row.layers * 0.2).margin(0.001));
    }
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

TEST_CASE("two folds that do not touch each other may be swapped") {
    for (nets::Draft draft : nets::all()) {
        if (draft.folds.size() < 2) continue;
        INFO(draft.name);
        std::swap(draft.folds[0], draft.folds[1]);  // the two tabs, or the two side flaps
        check_quiet(draft);
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

TEST_CASE("a stack is folded in one, and what the fold bends itself need not end before it") {
    // A sheet of two by two panels, folded in half and in half again.
    nets::Draft draft;
    draft.name = "quarters";
    draft.panels = {{"a", nets::box(0, 0, 50, 40)}, {"b", nets::box(50, 0, 100, 40)}, {"c", nets::box(0, 40, 50, 80)}, {"d", nets::box(50, 40, 100, 80)}};
    draft.folds = {{{"c", "d"}}, {{"b", "d"}}};
    draft.layers = {"b", "d", "c", "a"};
    check_quiet(draft);
    const Made m = made(draft);
    CHECK(m.folded.most_layers == 4);
    REQUIRE(m.folded.scores.size() == 4);
    // The last score lies on panels that face away by then.
    CHECK(std::count_if(m.folded.scores.begin(), m.folded.scores.end(), [](const ScoreLine& s) { return !s.valley; }) == 1);
}

TEST_CASE("slanted flaps may begin at the end of a fold, straight ones may not") {
    nets::Draft draft = nets::envelope();
    draft.panel("side-left").steps = {nets::corner(0, 0), nets::corner(-16, 8), nets::corner(-16, 52), nets::corner(0, 60)};
    check_quiet(draft);
    draft.panel("side-left").steps = {nets::corner(0, 0), nets::corner(-16, 0), nets::corner(-16, 52), nets::corner(0, 60)};
    CHECK(finds(draft, "part-inner-panel"));
}

TEST_CASE("n equal panels fold to n layers of one panel's size, whichever end is folded first") {
    std::mt19937 chance(17);
    std::uniform_real_distribution<double> width(20, 90), height(20, 120), caliper(0.08, 0.35);
    for (int n = 2; n <= 8; ++n) {
        const double w = width(chance);
        std::vector<nets::Draft::Fold> from_left, from_right;
        for (int k = 2; k <= n; ++k) {  // each fold takes all that is left over to the other side
            std::vector<std::string> rest, first;
            for (int i = k; i <= n; ++i) rest.push_back("p" + std::to_string(i));
            for (int i = 1; i < k; ++i) first.push_back("p" + std::to_string(i));
            from_left.push_back({rest, true});
            from_right.push_back({first, k % 2 == 0});
        }
        for (const auto& folds : {from_left, from_right}) {
            nets::Draft draft = nets::row_of(std::vector<double>(static_cast<std::size_t>(n), w), height(chance), folds);
            draft.caliper = caliper(chance);
            const Made m = made(draft);
            INFO(n);
            CHECK(m.folded.findings.empty());
            CHECK(m.folded.most_layers == n);
            CHECK(m.folded.thickness.in_mm() == Approx(n * draft.caliper).margin(0.001));
            CHECK(m.folded.size.width.in_mm() == Approx(w).margin(0.001));
        }
    }
}

TEST_CASE("a pose keeps lengths and areas, and the closed part is as large as its largest panel") {
    std::mt19937 chance(23);
    std::uniform_real_distribution<double> width(20, 90);
    for (int round = 0; round < 40; ++round) {
        const int n = 2 + round % 6;
        std::vector<double> widths;
        std::vector<nets::Draft::Fold> folds;
        for (int i = 0; i < n; ++i) widths.push_back(width(chance));
        const double largest = *std::max_element(widths.begin(), widths.end());
        // To and fro, from the last panel on: each fold takes a stack that begins at its line.
        for (int i = n; i >= 2; --i) {
            std::vector<std::string> rest;
            for (int k = i; k <= n; ++k) rest.push_back("p" + std::to_string(k));
            folds.push_back({rest, (n - i) % 2 == 0});
        }
        const Made m = made(nets::row_of(widths, 60, folds));
        REQUIRE(m.folded.states.size() == folds.size() + 1);
        for (const State& state : m.folded.states)
            for (std::size_t i = 0; i < state.size(); ++i) {
                const Region placed = mapped(m.built.net.panels[i].region, state[i].place);
                CHECK(area_mm2(placed) == Approx(widths[i] * 60).epsilon(1e-5));
                const Matrix& p = state[i].place;
                CHECK(p.a * p.d - p.b * p.c == Approx(state[i].back_up ? -1 : 1).epsilon(1e-9));
                const Region again = mapped(placed, back_to_flat(state[i]));
                CHECK(std::abs((bounds(again).left - bounds(m.built.net.panels[i].region).left).in_mm()) < 0.001);
            }
        // Zig and zag of unlike panels reach as far as the longest run; here each panel begins on the line of the one before.
        CHECK(m.folded.size.width.in_mm() >= largest - 0.001);
        CHECK(m.folded.size.height.in_mm() == Approx(60).margin(0.001));
    }
}

TEST_CASE("panels that lie on one panel do not make the closed part larger") {
    std::mt19937 chance(31);
    std::uniform_real_distribution<double> share(0.2, 0.99);
    for (int round = 0; round < 60; ++round) {
        const double w = 90, right = w * share(chance), left = w * share(chance);
        nets::Draft draft = nets::row_of({left, w, right}, 60, {{{"p3"}}, {{"p1"}, round % 2 == 0}});
        const bool meet = left + right > w;
        draft.layers = round % 2 == 0 ? std::vector<std::string>{"p1", "p3", "p2"} : std::vector<std::string>{"p3", "p2", "p1"};
        const Made m = made(draft);
        INFO(left << " " << right << " " << meet);
        CHECK(m.folded.findings.empty());
        CHECK(m.folded.size.width == Length::mm(w));
        CHECK(m.folded.most_layers == (meet ? 3 : 2));
    }
}

TEST_CASE("a fold is undone by folding it back") {
    for (nets::Draft draft : nets::all()) {
        INFO(draft.name);
        draft.glue.clear();
        draft.layers.clear();
        draft.faces.clear();
        const std::size_t count = draft.folds.size();
        for (std::size_t i = count; i-- > 0;) draft.folds.push_back(draft.folds[i]);  // toward the viewer again: what lies above comes off
        const Made m = made(draft);
        for (const Finding& f : m.folded.findings) UNSCOPED_INFO(f.rule << ": " << f.message);
        CHECK(m.folded.findings.empty());
        REQUIRE(m.folded.states.size() == 2 * count + 1);
        for (std::size_t k = 0; k <= count; ++k) {
            const State &there = m.folded.states[k], &back = m.folded.states[2 * count - k];
            for (std::size_t i = 0; i < there.size(); ++i) {
                CHECK(there[i].back_up == back[i].back_up);
                CHECK(there[i].level == back[i].level);
                const double worst = std::max({std::abs(there[i].place.a - back[i].place.a), std::abs(there[i].place.b - back[i].place.b),
                                               std::abs(there[i].place.e - back[i].place.e), std::abs(there[i].place.f - back[i].place.f)});
                CHECK(worst < 1e-3);
            }
        }
        CHECK(m.folded.scores.size() == made(nets::all()[0]).folded.scores.size() * (draft.name == "trifold-pocket" ? 1 : 0) +
                                            (draft.name == "trifold-pocket" ? 0 : count));
    }
}

}  // namespace qw::parts::folding_tests
