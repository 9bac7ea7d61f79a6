// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/part_lines.h"

#include "compose/collisions.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace qw::compose {

namespace {

/// Cubic curves for an arc, none longer than a quarter of the circle: control points lie 4/3 · tan(a/4) radii along the
/// tangents at the ends of an arc of the angle a, so that the curve meets the circle in its middle.
void add_arc(std::vector<std::variant<Outline::Move, Outline::Line, Outline::Curve, Outline::Close>>& steps, Point from, const parts::Outline::Edge& edge,
             const Matrix& map) {
    const Point c = *edge.centre;
    const double x = (from.x - c.x).in_mm(), y = (from.y - c.y).in_mm(), radius = std::hypot(x, y);
    const double begin = std::atan2(y, x), end = std::atan2((edge.to.y - c.y).in_mm(), (edge.to.x - c.x).in_mm());
    double sweep = end - begin;
    const double turn = 2 * std::numbers::pi;
    if (edge.clockwise) while (sweep >= 0) sweep -= turn;
    else while (sweep <= 0) sweep += turn;
    const int pieces = static_cast<int>(std::ceil(std::abs(sweep) / (turn / 4) - 1e-9));
    const double piece = sweep / pieces, reach = radius * 4 / 3 * std::tan(piece / 4);
    const auto at = [&](double angle, double along) {
        return parts::mapped(Point{c.x + Length::mm(radius * std::cos(angle) - along * std::sin(angle)),
                                   c.y + Length::mm(radius * std::sin(angle) + along * std::cos(angle))},
                             map);
    };
    for (int i = 0; i < pieces; ++i) {
        const double a = begin + piece * i, b = a + piece;
        steps.push_back(Outline::Curve{at(a, reach), at(b, -reach), i + 1 == pieces ? parts::mapped(edge.to, map) : at(b, 0)});
    }
}

void draw_scores(Canvas& canvas, const PartLines& lines, const Matrix& map, const kit::PartRules& rules) {
    for (const parts::ScoreLine& score : lines.scores) {
        const kit::LineStyle& style = score.valley ? rules.valley : rules.mountain;
        canvas.line(parts::mapped(score.from, map), parts::mapped(score.to, map), style.weight, style.dash);
    }
}

/// The circle and the cross that finds its middle go away with what is punched out.
void draw_hole(Canvas& canvas, Point middle, Length radius, Length weight) {
    canvas.circle(middle, radius, weight);
    canvas.line({middle.x - radius, middle.y}, {middle.x + radius, middle.y}, weight);
    canvas.line({middle.x, middle.y - radius}, {middle.x, middle.y + radius}, weight);
}

/// The word as large as it fits, along the tab or upright. A gap in the hatching as large as the word, or nothing.
std::optional<Rect> draw_word(Canvas& canvas, const std::string& word, const parts::Region& tab, const std::vector<Stroke>& lines) {
    const Length clear = Length::mm(0.7);
    for (const double points : {8.5, 7.0, 5.5}) {
        const Setting setting{type::Cut::strong, Length::points(points), Length::points(points)};
        for (const double turn : {0.0, 90.0}) {
            const Rect box = box_of({{}, word, setting.cut, setting.size, Canvas::Anchor::middle, turn, 0}, canvas.fonts());
            const auto middle = room_for(box.inset(-clear).size(), tab, lines, parts::bounds(tab).centre());
            if (!middle) continue;
            const Point at{middle->x - box.centre().x, middle->y - box.centre().y};
            canvas.words(at, word, setting, Canvas::Anchor::middle, turn);
            return box.moved(at.x, at.y).inset(-clear);
        }
    }
    return std::nullopt;
}

std::vector<Stroke> straight_lines(const PartLines& lines, const Matrix& map) {
    std::vector<Stroke> strokes;
    for (const parts::ScoreLine& s : lines.scores) strokes.push_back({parts::mapped(s.from, map), parts::mapped(s.to, map)});
    for (const parts::Outline& outline : lines.cut)
        for (const Stroke& edge : edges_of(parts::mapped(outline.region(), map))) strokes.push_back(edge);
    return strokes;
}

}  // namespace

namespace {

/// What of a panel's front lies under other panels in the end, as the flat net has it.
parts::Region covered_in_the_end(const parts::Net& net, const parts::Folded& folded, std::size_t panel) {
    if (folded.states.size() != net.folds.size() + 1) return {};
    const parts::State& closed = folded.states.back();
    const Matrix& m = closed[panel].place;
    std::vector<parts::Region> over;
    for (std::size_t i = 0; i < net.panels.size(); ++i)
        if (closed[panel].back_up ? closed[i].level < closed[panel].level : closed[i].level > closed[panel].level)
            over.push_back(parts::mapped(net.panels[i].region, closed[i].place));
    // The way back of a map that turns, reflects and moves.
    const double size = m.a * m.d - m.b * m.c;
    const Matrix back{m.d / size, -m.b / size, -m.c / size, m.a / size, (m.c * m.f - m.d * m.e) / size, (m.b * m.e - m.a * m.f) / size};
    return parts::mapped(parts::united(over), back);
}

bool shows_a_face(const parts::Net& net, std::size_t panel) {
    return std::any_of(net.faces.begin(), net.faces.end(), [&](const parts::Face& face) {
        return face.side == parts::Side::front && std::find(face.panels.begin(), face.panels.end(), panel) != face.panels.end();
    });
}

}  // namespace

PartLines lines_of(const parts::Net& net, const parts::Folded& folded) {
    PartLines lines{net.cut, folded.scores, net.holes, {}};
    const parts::Region unseen = parts::hidden(net, folded, parts::Side::front);
    for (const parts::Glue& glue : net.glue) {
        parts::Region free = parts::united(unseen, parts::glued(net, folded, glue.tab, parts::Side::front));
        if (!shows_a_face(net, glue.tab)) free = parts::united(free, covered_in_the_end(net, folded, glue.tab));
        lines.tabs.push_back(parts::shared(net.panels[glue.tab].region, free));
    }
    return lines;
}

Outline outline_on_page(const parts::Outline& outline, const Matrix& map) {
    Outline drawn;
    drawn.steps.push_back(Outline::Move{parts::mapped(outline.start, map)});
    Point here = outline.start;
    for (std::size_t i = 0; i < outline.edges.size(); ++i) {
        const parts::Outline::Edge& edge = outline.edges[i];
        const bool closes = i + 1 == outline.edges.size() && !edge.centre;
        if (edge.centre) add_arc(drawn.steps, here, edge, map);
        else if (!closes) drawn.steps.push_back(Outline::Line{parts::mapped(edge.to, map)});
        here = edge.to;
    }
    drawn.steps.push_back(Outline::Close{});
    return drawn;
}

void draw_part_lines(Canvas& canvas, const PartLines& lines, const Matrix& map, const kit::PartRules& rules, const std::string& glue) {
    const std::vector<Stroke> others = straight_lines(lines, map);
    for (const parts::Region& flat : lines.tabs) {
        parts::Region tab = parts::mapped(flat, map);
        if (tab.empty()) continue;
        if (const auto gap = draw_word(canvas, glue, tab, others)) tab = parts::without(tab, region_of(*gap));
        canvas.add(strokes_outline(hatching(tab, rules.hatch_gap), rules.hatch_weight));
    }
    for (const parts::Hole& hole : lines.holes) draw_hole(canvas, parts::mapped(hole.at, map), hole.diameter / 2, rules.hatch_weight);
    draw_scores(canvas, lines, map, rules);
    for (const parts::Outline& outline : lines.cut) {
        Outline drawn = outline_on_page(outline, map);
        drawn.stroke = rules.cut.weight;
        drawn.dash = rules.cut.dash;
        canvas.add(std::move(drawn));
    }
}

}  // namespace qw::compose
