// SPDX-License-Identifier: GPL-3.0-or-later
// Random nets of rectangles, folded at random: what src/parts says about polygons against what a grid of cells says.
#include "parts/folding.h"

#include "grid_folding.h"
#include "nets.h"
#include "parts/lying.h"
#include "support/sanitized.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

namespace qw::parts::folding_judged {

namespace {

constexpr double cell_mm = 10;

struct Box { int left, bottom, right, top; };

using Chance = std::mt19937;
int pick(Chance& chance, int least, int most) { return std::uniform_int_distribution<int>(least, most)(chance); }

/// A net of rectangles that hang together like a tree, sometimes with more common edges.
struct RandomNet {
    std::vector<Box> boxes;
    std::vector<std::pair<int, int>> joints;  ///< parent, child
    grid::Sheet sheet;
};

bool free_for(const RandomNet& net, const Box& box, int parent, bool may_touch) {
    for (int x = box.left; x < box.right; ++x)
        for (int y = box.bottom; y < box.top; ++y)
            for (const auto& [dx, dy] : {std::pair{0, 0}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
                const auto there = net.sheet.panel_of.find({x + dx, y + dy});
                if (there == net.sheet.panel_of.end()) continue;
                if ((dx == 0 && dy == 0) || (there->second != parent && !may_touch)) return false;
            }
    return true;
}

Box beside(Chance& chance, const Box& at) {
    const bool alike = pick(chance, 0, 1) == 0;  // panels of one size lie over each other in many layers
    const int width = alike ? at.right - at.left : pick(chance, 1, 5), height = alike ? at.top - at.bottom : pick(chance, 1, 5);
    const int x = alike ? at.left : pick(chance, at.left - width + 1, at.right - 1), y = alike ? at.bottom : pick(chance, at.bottom - height + 1, at.top - 1);
    switch (pick(chance, 0, 3)) {
        case 0: return {at.right, y, at.right + width, y + height};
        case 1: return {at.left - width, y, at.left, y + height};
        case 2: return {x, at.top, x + width, at.top + height};
        default: return {x, at.bottom - height, x + width, at.bottom};
    }
}

void put(RandomNet& net, const Box& box) {
    for (int x = box.left; x < box.right; ++x)
        for (int y = box.bottom; y < box.top; ++y) net.sheet.panel_of[{x, y}] = net.sheet.panels;
    net.boxes.push_back(box);
    ++net.sheet.panels;
}

RandomNet random_net(Chance& chance) {
    RandomNet net;
    put(net, {0, 0, pick(chance, 2, 6), pick(chance, 2, 6)});
    const int wanted = pick(chance, 2, 7);
    const bool may_touch = pick(chance, 0, 1) == 0;
    for (int tries = 0; tries < 60 && net.sheet.panels < wanted; ++tries) {
        const int parent = pick(chance, 0, net.sheet.panels - 1);
        const Box box = beside(chance, net.boxes[static_cast<std::size_t>(parent)]);
        if (!free_for(net, box, parent, may_touch)) continue;
        net.joints.emplace_back(parent, net.sheet.panels);
        put(net, box);
    }
    return net;
}

/// The panels beyond a joint.
std::set<int> branch(const RandomNet& net, int child) {
    std::set<int> panels{child};
    for (const auto& [parent, kid] : net.joints)  // parents come before their children
        if (panels.count(parent)) panels.insert(kid);
    return panels;
}

std::string name_of(int panel) { return "p" + std::to_string(panel); }

nets::Draft draft_of(const RandomNet& net) {
    nets::Draft draft;
    draft.name = "random";
    draft.caliper = 0.001;             // bends are judged elsewhere
    for (int i = 0; i < net.sheet.panels; ++i) {
        const Box& box = net.boxes[static_cast<std::size_t>(i)];
        draft.panels.push_back({name_of(i), nets::box(box.left * cell_mm, box.bottom * cell_mm, box.right * cell_mm, box.top * cell_mm)});
    }
    return draft;
}

/// What the judge saw: each state that was reached, and how it ended.
struct Judged {
    std::vector<grid::Table> states;
    grid::Outcome last = grid::Outcome::folded;
    std::set<std::pair<int, int>> folded;
};

void note_folded(const grid::Sheet& sheet, const std::set<int>& moves, Judged& judged) {
    for (const auto& [cell, panel] : sheet.panel_of)
        for (const auto& [dx, dy] : {std::pair{1, 0}, {0, 1}}) {
            const auto other = sheet.panel_of.find({cell.first + dx, cell.second + dy});
            if (other == sheet.panel_of.end() || moves.count(panel) == moves.count(other->second)) continue;
            judged.folded.insert({std::min(panel, other->second), std::max(panel, other->second)});
        }
}

/// Folds at random on the grid, and writes the same folds into the draft.
Judged fold_at_random(const RandomNet& net, nets::Draft& draft, Chance& chance) {
    Judged judged;
    judged.states.push_back(grid::laid_flat(net.sheet));
    for (int count = pick(chance, 2, 8); count > 0 && !net.joints.empty(); --count) {
        std::set<int> moves = branch(net, net.joints[static_cast<std::size_t>(pick(chance, 0, static_cast<int>(net.joints.size()) - 1))].second);
        if (pick(chance, 0, 3) == 0) {  // the rest moves, the branch stays
            std::set<int> rest;
            for (int i = 0; i < net.sheet.panels; ++i)
                if (!moves.count(i)) rest.insert(i);
            moves = rest;
        }
        const bool toward = pick(chance, 0, 2) != 0;
        grid::Table table = judged.states.back();
        const grid::Outcome outcome = grid::fold(net.sheet, table, moves, toward);
        if (outcome == grid::Outcome::unclear) continue;
        if (outcome == grid::Outcome::barred && pick(chance, 0, 2) != 0) continue;  // to come deeper, another fold is tried
        draft.folds.push_back({{}, toward});
        for (const int panel : moves) draft.folds.back().moves.push_back(name_of(panel));
        judged.last = outcome;
        if (outcome != grid::Outcome::folded) break;
        note_folded(net.sheet, moves, judged);
        judged.states.push_back(std::move(table));
    }
    return judged;
}

void compare_panel(const RandomNet& net, const grid::Table& table, const Lying& lying, int panel) {
    const auto i = static_cast<std::size_t>(panel);
    int left = 1000, bottom = 1000, right = -1000, top = -1000;
    bool back_up = false;
    for (const auto& [cell, layers] : table)
        for (const grid::Layer& layer : layers) {
            if (net.sheet.panel_of.at(layer.flat) != panel) continue;
            left = std::min(left, cell.first), right = std::max(right, cell.first + 1);
            bottom = std::min(bottom, cell.second), top = std::max(top, cell.second + 1);
            back_up = layer.back_up();
        }
    CHECK(lying.poses[i].back_up == back_up);
    const Rect box = bounds(lying.placed[i]);
    const Rect seen{Length::mm(left * cell_mm), Length::mm(bottom * cell_mm), Length::mm(right * cell_mm), Length::mm(top * cell_mm)};
    CHECK((box.holds(seen, Length::mm(0.001)) && seen.holds(box, Length::mm(0.001))));
    std::set<int> all;
    for (int other = 0; other < net.sheet.panels; ++other) all.insert(other);
    for (const bool back : {false, true}) {
        Region open = lying.placed[i];
        for (std::size_t j = 0; j < lying.placed.size(); ++j)
            if (lying.order[j][i] == (back_up == back ? 1 : -1)) open = without(open, lying.placed[j]);
        const double cells = static_cast<double>(grid::covered(net.sheet, table, panel, back, all).size());
        CHECK(area_mm2(lying.placed[i]) - area_mm2(open) == Approx(cells * cell_mm * cell_mm).margin(0.1));
    }
}

void compare_state(const RandomNet& net, const grid::Table& table, const Net& polygons, const State& state) {
    const Lying lying = lying_as(polygons.panels, state);
    for (int a = 0; a < net.sheet.panels; ++a) {
        compare_panel(net, table, lying, a);
        for (int b = 0; b < a; ++b) CHECK(lying.order[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)] == grid::order(net.sheet, table, a, b).value());
    }
}

bool has(const Folded& folded, const std::string& rule) {
    return std::any_of(folded.findings.begin(), folded.findings.end(), [&](const Finding& f) { return f.rule == rule; });
}

/// Pairs that touch in the closed part, some of them.
std::vector<std::pair<int, int>> glue_at_random(const RandomNet& net, const grid::Table& closed, Chance& chance) {
    std::set<std::pair<int, int>> touching;
    for (const auto& [cell, layers] : closed)
        for (std::size_t i = 0; i + 1 < layers.size(); ++i) touching.insert({net.sheet.panel_of.at(layers[i].flat), net.sheet.panel_of.at(layers[i + 1].flat)});
    std::vector<std::pair<int, int>> glued;
    for (const auto& pair : touching)
        if (pick(chance, 0, 2) == 0) glued.push_back(pair);
    return glued;
}

void check_tabs_judged(const RandomNet& net, const grid::Table& closed, const std::vector<std::pair<int, int>>& glued, const Folded& folded) {
    bool uncovered = false;
    for (const auto& [tab, on] : glued) {
        for (const auto& [cell, layers] : closed) {
            std::optional<std::size_t> of_tab, of_on;
            for (std::size_t i = 0; i < layers.size(); ++i) {
                if (net.sheet.panel_of.at(layers[i].flat) == tab) of_tab = i;
                if (net.sheet.panel_of.at(layers[i].flat) == on) of_on = i;
            }
            if (of_tab && (!of_on || (*of_tab + 1 != *of_on && *of_on + 1 != *of_tab))) uncovered = true;
        }
    }
    CHECK(has(folded, "part-tab-uncovered") == uncovered);
}

void check_hidden(const RandomNet& net, const Judged& judged, const std::vector<std::pair<int, int>>& glued, const Net& polygons, const Folded& folded) {
    for (const Side side : {Side::front, Side::back}) {
        const Region area = hidden(polygons, folded, side);
        std::size_t cells = 0;
        for (const Face& face : polygons.faces) {
            if (face.side != side) continue;
            const int panel = static_cast<int>(face.panels[0]);
            const std::set<int> held = grid::held_to(net.sheet, judged.states.back(), judged.folded, glued, panel);
            for (const auto& [cell, owner] : net.sheet.panel_of) {
                if (owner != panel) continue;
                bool always = !glued.empty();
                for (std::size_t k = face.after; k < judged.states.size(); ++k)
                    always = always && grid::covered(net.sheet, judged.states[k], panel, side == Side::back, held).count(cell) > 0;
                cells += always;
                CHECK(holds(area, {Length::mm((cell.first + 0.5) * cell_mm), Length::mm((cell.second + 0.5) * cell_mm)}) == always);
            }
        }
        CHECK(area_mm2(area) == Approx(static_cast<double>(cells) * cell_mm * cell_mm).margin(0.1));
    }
}

/// Faces on single panels, each side once, looked at after some fold.
void add_faces(nets::Draft& draft, const RandomNet& net, Chance& chance, std::size_t reached) {
    for (int i = 0; i < net.sheet.panels; ++i)
        for (const Side side : {Side::front, Side::back})
            draft.faces.push_back({name_of(i), side, {name_of(i)}, pick(chance, 0, 3), pick(chance, 0, static_cast<int>(reached)), pick(chance, 0, 1) == 0});
}

struct Seen { bool hidden = false, turned = false; };

Seen look(const RandomNet& net, const grid::Table& table, const nets::Draft::Face& face, int panel) {
    std::set<int> all;
    for (int other = 0; other < net.sheet.panels; ++other) all.insert(other);
    const bool back = face.side == Side::back;
    for (const auto& [cell, layers] : table)
        for (const grid::Layer& layer : layers) {
            if (net.sheet.panel_of.at(layer.flat) != panel) continue;
            if ((layer.back_up() == back) != face.from_front) return {true, false};
            // Heads up and down are told by the rows. Left and right are no heads that are up.
            const bool up = face.head == 0 ? !layer.against_y : face.head == 2 && layer.against_y;
            return {!grid::covered(net.sheet, table, panel, back, all).empty(), !up};
        }
    return {};
}

}  // namespace

TEST_CASE("random nets of rectangles fold as they do on a grid of cells") {
    Chance chance(20260704);
    const int rounds = test::sanitized() ? 60 : 450;  // what repeats itself is seen once
    int folded_nets = 0, torn = 0, barred = 0, deep = 0;
    for (int round = 0; round < rounds; ++round) {
        const RandomNet net = random_net(chance);
        nets::Draft draft = draft_of(net);
        const Judged judged = fold_at_random(net, draft, chance);
        const nets::Built built = nets::build(draft);
        const Folded result = fold(built.net);
        INFO("round " << round);
        REQUIRE(result.states.size() == judged.states.size());
        CHECK(has(result, "part-tears") == (judged.last == grid::Outcome::torn));
        CHECK(has(result, "part-passes-through") == (judged.last == grid::Outcome::barred));
        for (std::size_t k = 0; k < result.states.size(); ++k) compare_state(net, judged.states[k], built.net, result.states[k]);
        std::size_t most = 0;
        for (const auto& [cell, layers] : judged.states.back()) most = std::max(most, layers.size());
        CHECK(result.most_layers == static_cast<int>(most));
        folded_nets += judged.last == grid::Outcome::folded;
        torn += judged.last == grid::Outcome::torn;
        barred += judged.last == grid::Outcome::barred;
        deep += most >= 4;
    }
    if (test::sanitized()) return;
    // Chance has to bring all of them, or this judges little.
    CHECK(folded_nets > 200);
    CHECK(torn > 50);
    CHECK(barred > 50);
    CHECK(deep > 30);
}

TEST_CASE("random nets with glue and faces: tabs, hidden areas, what is seen and how, and layers as on the grid") {
    Chance chance(44);
    const int rounds = test::sanitized() ? 60 : 300;
    int hidden_nets = 0, quiet_faces = 0;
    for (int round = 0; round < rounds; ++round) {
        const RandomNet net = random_net(chance);
        nets::Draft draft = draft_of(net);
        const Judged judged = fold_at_random(net, draft, chance);
        if (judged.last != grid::Outcome::folded) continue;
        const auto glued = glue_at_random(net, judged.states.back(), chance);
        for (const auto& [tab, on] : glued) draft.glue.push_back({name_of(tab), name_of(on)});
        add_faces(draft, net, chance, judged.states.size() - 1);
        std::vector<int> layers;
        for (int i = 0; i < net.sheet.panels; ++i) layers.push_back(i);
        std::shuffle(layers.begin(), layers.end(), chance);
        for (const int panel : layers) draft.layers.push_back(name_of(panel));

        const nets::Built built = nets::build(draft);
        const Folded result = fold(built.net);
        INFO("round " << round);
        REQUIRE(result.states.size() == judged.states.size());
        check_tabs_judged(net, judged.states.back(), glued, result);
        check_hidden(net, judged, glued, built.net, result);
        for (const Side side : {Side::front, Side::back}) hidden_nets += !hidden(built.net, result, side).empty();

        bool wrong = false;
        for (std::size_t i = 0; i < layers.size(); ++i)
            for (std::size_t j = i + 1; j < layers.size(); ++j) wrong = wrong || grid::order(net.sheet, judged.states.back(), layers[i], layers[j]).value() < 0;
        CHECK(has(result, "part-layers") == wrong);

        for (std::size_t i = 0; i < draft.faces.size(); ++i) {
            const Seen seen = look(net, judged.states[static_cast<std::size_t>(draft.faces[i].after)], draft.faces[i],
                                   static_cast<int>(built.net.faces[i].panels[0]));
            const auto said = [&](const char* rule) {
                return std::any_of(result.findings.begin(), result.findings.end(),
                                   [&](const Finding& f) { return f.rule == rule && f.line == 400 + static_cast<int>(i); });
            };
            CHECK(said("part-face-hidden") == seen.hidden);
            CHECK(said("part-face-turned") == seen.turned);
            quiet_faces += !seen.hidden && !seen.turned;
        }
    }
    if (test::sanitized()) return;
    CHECK(hidden_nets > 50);
    CHECK(quiet_faces > 100);
}

}  // namespace qw::parts::folding_judged
