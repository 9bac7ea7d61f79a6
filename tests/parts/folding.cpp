// SPDX-License-Identifier: GPL-3.0-or-later
// What can be folded: sizes, layers, scores, and what holds for every fold. What cannot stands in folding_faults.cpp.
#include "parts/folding.h"

#include "folded_nets.h"
#include "parts/bend.h"
#include "parts/lying.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

namespace qw::parts::folding_tests {

namespace {

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

TEST_CASE("two folds that do not touch each other may be swapped") {
    for (nets::Draft draft : nets::all()) {
        if (draft.folds.size() < 2) continue;
        INFO(draft.name);
        std::swap(draft.folds[0], draft.folds[1]);  // the two tabs, or the two side flaps
        check_quiet(draft);
    }
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
