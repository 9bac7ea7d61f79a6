// SPDX-License-Identifier: GPL-3.0-or-later
#include "nets.h"

#include "parts/assemble.h"

#include <algorithm>
#include <stdexcept>

namespace nets {

using namespace qw;
using Kind = kit::OutlineStep::Kind;

namespace {

Point scaled(Point p, double by) { return {p.x * by, p.y * by}; }

std::size_t index_of(const Draft& draft, const std::string& name) {
    for (std::size_t i = 0; i < draft.panels.size(); ++i)
        if (draft.panels[i].name == name) return i;
    throw std::logic_error("no panel " + name);
}

std::vector<std::size_t> indices_of(const Draft& draft, const std::vector<std::string>& names) {
    std::vector<std::size_t> indices;
    for (const std::string& name : names) indices.push_back(index_of(draft, name));
    return indices;
}

parts::Panel panel_of(const Draft& draft, const Draft::Panel& panel) {
    std::vector<Step> steps = panel.steps;
    for (Step& step : steps) step = {step.kind, scaled(step.at, draft.scale), step.radius * draft.scale, scaled(step.through, draft.scale)};
    const parts::MadeOutline made = parts::outline_of(steps);
    if (!made.outline) throw std::logic_error(panel.name + " " + made.faults.front().wrong);
    return {panel.name, panel.name, *made.outline, made.outline->region()};
}

std::shared_ptr<kit::PartTemplate> marks_of(const Draft& draft) {
    auto part = std::make_shared<kit::PartTemplate>();
    part->name = draft.name;
    part->file = "pipeline/parts/" + draft.name + ".yaml";
    const auto mark = [&](int line, std::size_t i) { return SourceMark{part->file, line + static_cast<int>(i), 5}; };
    part->mark = mark(1, 0);
    for (std::size_t i = 0; i < draft.folds.size(); ++i) part->folds.push_back({draft.folds[i].moves, draft.folds[i].valley, mark(200, i)});
    for (std::size_t i = 0; i < draft.glue.size(); ++i) part->glue.push_back({draft.glue[i].tab, draft.glue[i].on, "pva-glue", mark(300, i)});
    for (std::size_t i = 0; i < draft.faces.size(); ++i) {
        part->faces.emplace_back();
        part->faces.back().name = draft.faces[i].name;
        part->faces.back().mark = mark(400, i);
    }
    for (std::size_t i = 0; i < draft.pockets.size(); ++i) {
        part->pockets.emplace_back();
        part->pockets.back().name = draft.pockets[i].name;
        part->pockets.back().mark = mark(500, i);
    }
    return part;
}

std::size_t after_of(const Draft& draft, int after) { return after < 0 ? draft.folds.size() : static_cast<std::size_t>(after); }

}  // namespace

Step corner(double x, double y) { return {Kind::corner, {Length::mm(x), Length::mm(y)}, {}, {}}; }
Step rounded(double x, double y, double radius) { return {Kind::rounded, {Length::mm(x), Length::mm(y)}, Length::mm(radius), {}}; }
Step arc(double through_x, double through_y, double x, double y) {
    return {Kind::arc, {Length::mm(x), Length::mm(y)}, {}, {Length::mm(through_x), Length::mm(through_y)}};
}
std::vector<Step> box(double left, double bottom, double right, double top) {
    return {corner(left, bottom), corner(right, bottom), corner(right, top), corner(left, top)};
}

Draft::Panel& Draft::panel(const std::string& which) { return panels[index_of(*this, which)]; }
Draft::Face& Draft::face(const std::string& which) {
    const auto found = std::find_if(faces.begin(), faces.end(), [&](const Face& f) { return f.name == which; });
    if (found == faces.end()) throw std::logic_error("no face " + which);
    return *found;
}

Built build(const Draft& draft) {
    Built built{marks_of(draft), {}};
    parts::Net& net = built.net;
    net.part = built.part.get();
    net.conditions.system = draft.system;
    net.conditions.scale = draft.scale;
    net.conditions.caliper = Length::mm(draft.caliper);
    for (const Draft::Panel& panel : draft.panels) net.panels.push_back(panel_of(draft, panel));
    for (const Draft::Fold& fold : draft.folds) net.folds.push_back({indices_of(draft, fold.moves), fold.valley});
    for (const Draft::Glue& glue : draft.glue) net.glue.push_back({index_of(draft, glue.tab), index_of(draft, glue.on), "pva-glue"});
    for (const Draft::Face& face : draft.faces) {
        const std::vector<std::size_t> panels = indices_of(draft, face.panels);
        net.faces.push_back({face.name, face.name, face.side, panels, parts::frame_of(net.panels, panels), face.head, true,
                             after_of(draft, face.after), face.from_front});
    }
    for (const Draft::Pocket& pocket : draft.pockets)
        net.pockets.push_back({pocket.name, pocket.name, index_of(draft, pocket.front), index_of(draft, pocket.back), pocket.opens, pocket.closes,
                               after_of(draft, pocket.after)});
    net.layers = indices_of(draft, draft.layers);
    parts::Assembled made = parts::assembled(net.panels);
    net.whole = std::move(made.whole);
    net.cut = std::move(made.cut);
    return built;
}

Draft trifold_pocket() {
    Draft d;
    d.name = "trifold-pocket";
    d.panels = {{"left", box(0, 0, 84, 120)}, {"middle", box(84, 0, 168, 120)}, {"right", box(168, 0, 250.5, 120)},
                {"strip-left", box(0, -64, 84, 0)}, {"strip-middle", box(84, -64, 168, 0)}, {"strip-right", box(168, -64, 250.5, 0)},
                {"tab-left", {corner(0, -1), corner(-10, -5), corner(-10, -59), corner(0, -63)}},
                {"tab-right", {corner(250.5, -1), corner(260.5, -5), corner(260.5, -59), corner(250.5, -63)}}};
    d.folds = {{{"tab-left"}}, {{"tab-right"}}, {{"strip-left", "strip-middle", "strip-right", "tab-left", "tab-right"}},
               {{"right", "strip-right", "tab-right"}}, {{"left", "strip-left", "tab-left"}}};
    d.glue = {{"tab-left", "left"}, {"tab-right", "right"}};
    d.faces = {{"cover", Side::back, {"left"}, 0, -1, true}, {"back", Side::back, {"middle"}, 0, -1, false}, {"flap", Side::back, {"right"}, 0, 4, true},
               {"inside", Side::front, {"left", "middle", "right"}, 0, 3, true},
               {"pockets", Side::back, {"strip-left", "strip-middle", "strip-right"}, 2, 3, true}};
    d.pockets = {{"left", "strip-left", "left", 0, false, 3}, {"middle", "strip-middle", "middle", 0, false, 3}, {"right", "strip-right", "right", 0, false, 3}};
    d.layers = {"left", "strip-left", "right", "strip-right", "strip-middle", "middle"};
    return d;
}

Draft envelope() {
    Draft d;
    d.name = "envelope";
    d.panels = {{"body", box(0, 0, 120, 80)},
                {"front", {corner(0, 0), corner(0, -66), rounded(6, -72, 3), rounded(114, -72, 3), corner(120, -66), corner(120, 0)}},
                {"side-left", {corner(0, 2), corner(-16, 10), corner(-16, 52), corner(0, 60)}},
                {"side-right", {corner(120, 2), corner(136, 10), corner(136, 52), corner(120, 60)}},
                {"flap", {corner(0, 80), corner(120, 80), rounded(100, 112, 8), rounded(20, 112, 8)}}};
    d.folds = {{{"side-left"}}, {{"side-right"}}, {{"front"}}, {{"flap"}}};
    d.glue = {{"side-left", "front"}, {"side-right", "front"}};
    d.faces = {{"address", Side::back, {"body"}, 0, -1, false}, {"front", Side::back, {"front"}, 2, 3, true}, {"flap", Side::back, {"flap"}, 2, -1, true},
               {"lining", Side::front, {"body", "flap"}, 0, 0, true}};
    d.pockets = {{"letter", "front", "body", 0, true, 3}};
    d.layers = {"flap", "front", "body"};
    return d;
}

Draft library_card_pocket() {
    Draft d;
    d.name = "library-card-pocket";
    d.panels = {{"back", {corner(0, 0), corner(80, 0), rounded(80, 104, 4), rounded(0, 104, 4)}},
                {"front", {corner(0, 0), corner(0, -66), corner(29, -66), arc(40, -55, 51, -66), corner(80, -66), corner(80, 0)}},
                {"tab-left", {corner(0, -1), corner(-9, -5), corner(-9, -60), corner(0, -64)}},
                {"tab-right", {corner(80, -1), corner(89, -5), corner(89, -60), corner(80, -64)}}};
    d.folds = {{{"tab-left"}, false}, {{"tab-right"}, false}, {{"front", "tab-left", "tab-right"}, false}};
    d.glue = {{"tab-left", "back"}, {"tab-right", "back"}};
    d.faces = {{"outside", Side::front, {"front"}, 2, -1, false}, {"back", Side::front, {"back"}, 0, -1, true}, {"inside", Side::back, {"back"}, 0, -1, false}};
    d.pockets = {{"card", "front", "back", 0, false, -1}};
    d.layers = {"back", "front"};
    return d;
}

Draft pocket_tag() {
    Draft d;
    d.name = "pocket-tag";
    d.panels = {{"back", {corner(0, 0), corner(60, 0), corner(60, 88), corner(48, 100), corner(12, 100), corner(0, 88)}},
                {"front", {corner(60, 0), corner(120, 0), corner(120, 76), corner(60, 76)}},
                {"tab-bottom", {corner(61, 0), corner(65, -9), corner(115, -9), corner(119, 0)}},
                {"tab-side", {corner(120, 11), corner(129, 15), corner(129, 70), corner(120, 74)}}};
    d.folds = {{{"tab-bottom"}, false}, {{"tab-side"}, false}, {{"front", "tab-bottom", "tab-side"}, false}};
    d.glue = {{"tab-bottom", "back"}, {"tab-side", "back"}};
    d.faces = {{"tag", Side::front, {"back"}, 0, -1, true}, {"pocket", Side::front, {"front"}, 0, -1, false}};
    d.pockets = {{"slip", "front", "back", 0, false, -1}};
    d.layers = {"back", "front"};
    return d;
}

Draft tuck_pocket() {
    Draft d;
    d.name = "tuck-pocket";
    d.panels = {{"back", box(0, 0, 70, 100)}, {"front", box(0, -92, 70, 0)},
                {"flap", {corner(0, 100), corner(70, 100), corner(64, 118), corner(6, 118)}},
                {"tab-left", {corner(0, -1), corner(-8, -5), corner(-8, -74), corner(0, -78)}},
                {"tab-right", {corner(70, -1), corner(78, -5), corner(78, -74), corner(70, -78)}}};
    d.folds = {{{"tab-left"}}, {{"tab-right"}}, {{"flap"}}, {{"front", "tab-left", "tab-right"}}};
    d.glue = {{"tab-left", "back"}, {"tab-right", "back"}};
    d.faces = {{"front", Side::back, {"front"}, 2, -1, true}, {"back", Side::back, {"back"}, 0, -1, false}, {"lining", Side::front, {"back", "flap"}, 0, 0, true}};
    d.pockets = {{"cards", "front", "back", 0, true, -1}};
    d.layers = {"front", "flap", "back"};
    return d;
}

Draft plain_tag() {
    Draft d;
    d.name = "plain-tag";
    d.panels = {{"tag", {rounded(0, 0, 3), rounded(50, 0, 3), corner(50, 80), corner(40, 90), corner(10, 90), corner(0, 80)}}};
    d.faces = {{"front", Side::front, {"tag"}, 0, -1, true}, {"back", Side::back, {"tag"}, 0, -1, false}};
    d.layers = {"tag"};
    return d;
}

std::vector<Draft> all() { return {trifold_pocket(), envelope(), library_card_pocket(), pocket_tag(), tuck_pocket(), plain_tag()}; }

Draft row_of(const std::vector<double>& widths, double height, const std::vector<Draft::Fold>& folds) {
    Draft d;
    d.name = "row";
    double left = 0;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        d.panels.push_back({"p" + std::to_string(i + 1), box(left, 0, left + widths[i], height)});
        left += widths[i];
    }
    d.folds = folds;
    return d;
}

Draft letter_fold(double left, double middle, double right) {
    Draft d = row_of({left, middle, right}, 100, {{{"p3"}}, {{"p1"}}});
    d.layers = {"p1", "p3", "p2"};
    return d;
}

}  // namespace nets
