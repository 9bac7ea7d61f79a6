// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/shape_room.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace qw::compose {

namespace {

double squared_distance(Point a, Point b) {
    const double x = (a.x - b.x).in_mm(), y = (a.y - b.y).in_mm();
    return x * x + y * y;
}

bool meets_any(const std::vector<Stroke>& strokes, const Rect& rect) {
    return std::any_of(strokes.begin(), strokes.end(), [&](const Stroke& s) { return runs_through(s, rect); });
}

}  // namespace

Length length_of(const Stroke& s) { return Length::mm(std::sqrt(squared_distance(s.from, s.to))); }

// Liang and Barsky's way of clipping a line to a rectangle.
bool runs_through(const Stroke& s, const Rect& r) {
    if (r.empty()) return false;
    const double x = s.from.x.in_mm(), y = s.from.y.in_mm(), dx = s.to.x.in_mm() - x, dy = s.to.y.in_mm() - y;
    double enter = 0, leave = 1;
    const std::array<std::pair<double, double>, 4> sides{{{-dx, x - r.left.in_mm()}, {dx, r.right.in_mm() - x},
                                                          {-dy, y - r.bottom.in_mm()}, {dy, r.top.in_mm() - y}}};
    for (const auto& [towards, room] : sides) {
        if (towards == 0 && room <= 0) return false;
        if (towards < 0) enter = std::max(enter, room / towards);
        if (towards > 0) leave = std::min(leave, room / towards);
    }
    return enter < leave;
}

std::vector<Stroke> edges_of(const parts::Region& area) {
    std::vector<Stroke> edges;
    for (const parts::Ring& ring : area)
        for (std::size_t i = 0; i < ring.size(); ++i) edges.push_back({ring[i], ring[(i + 1) % ring.size()]});
    return edges;
}

std::vector<Stroke> hatching(const parts::Region& area, Length gap) {
    std::vector<Stroke> strokes;
    if (area.empty() || gap <= Length()) return strokes;
    // `across` numbers the lines, y − x; along each the crossings with edges come in pairs, sorted by x.
    const std::vector<Stroke> edges = edges_of(area);
    const double apart = gap.in_mm() * std::sqrt(2.0);
    const auto across = [](Point p) { return p.y.in_mm() - p.x.in_mm(); };
    double least = across(edges[0].from), most = least;
    for (const Stroke& e : edges) least = std::min(least, across(e.from)), most = std::max(most, across(e.from));
    for (double line = std::ceil(least / apart) * apart; line < most; line += apart) {
        std::vector<double> crossings;
        for (const Stroke& e : edges) {
            const double a = across(e.from) - line, b = across(e.to) - line;
            if ((a <= 0) == (b <= 0)) continue;
            crossings.push_back(e.from.x.in_mm() + (e.to.x - e.from.x).in_mm() * a / (a - b));
        }
        std::sort(crossings.begin(), crossings.end());
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
            strokes.push_back({{Length::mm(crossings[i]), Length::mm(crossings[i] + line)}, {Length::mm(crossings[i + 1]), Length::mm(crossings[i + 1] + line)}});
    }
    return strokes;
}

Outline strokes_outline(const std::vector<Stroke>& strokes, Length weight, std::vector<Length> dash) {
    Outline outline;
    outline.stroke = weight;
    outline.dash = std::move(dash);
    for (const Stroke& s : strokes) {
        outline.steps.push_back(Outline::Move{s.from});
        outline.steps.push_back(Outline::Line{s.to});
    }
    return outline;
}

parts::Region region_of(const Rect& r) { return {{{r.left, r.bottom}, {r.right, r.bottom}, {r.right, r.top}, {r.left, r.top}}}; }

Rect mapped(const Rect& r, const Matrix& map) {
    const Point a = parts::mapped(Point{r.left, r.bottom}, map), b = parts::mapped(Point{r.right, r.top}, map);
    return {min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)};
}

std::optional<Point> room_for(Size box, const parts::Region& area, const std::vector<Stroke>& strokes, Point wanted) {
    if (area.empty()) return std::nullopt;
    const Rect middles = parts::bounds(area).inset(box.width / 2, box.height / 2);
    if (middles.right < middles.left || middles.top < middles.bottom) return std::nullopt;
    constexpr int steps = 24;
    std::vector<Point> tries{{min(max(wanted.x, middles.left), middles.right), min(max(wanted.y, middles.bottom), middles.top)}};
    for (int i = 0; i <= steps; ++i)
        for (int j = 0; j <= steps; ++j)
            tries.push_back({middles.left + middles.width() * (i / double{steps}), middles.bottom + middles.height() * (j / double{steps})});
    std::stable_sort(tries.begin() + 1, tries.end(), [&](Point a, Point b) { return squared_distance(a, wanted) < squared_distance(b, wanted); });
    const std::vector<Stroke> edges = edges_of(area);
    for (const Point middle : tries) {
        const Rect rect = Rect::at({middle.x - box.width / 2, middle.y - box.height / 2}, box);
        if (!meets_any(strokes, rect) && !meets_any(edges, rect) && parts::holds(area, middle)) return middle;
    }
    return std::nullopt;
}

}  // namespace qw::compose
