// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/edges.h"

#include "parts/arcs.h"
#include "parts/outline.h"
#include "parts/plane.h"

#include <algorithm>
#include <map>
#include <numbers>
#include <tuple>

namespace qw::parts {

namespace {

using PointKey = std::pair<std::int64_t, std::int64_t>;
PointKey key_of(Point p) { return {p.x.in_units(), p.y.in_units()}; }

/// The corners of the net, each once.
class NetCorners {
public:
    explicit NetCorners(const std::vector<Panel>& panels) {
        for (const Panel& panel : panels) {
            add(panel.outline.start);
            for (const Outline::Edge& edge : panel.outline.edges) add(edge.to);
        }
    }
    Point nearest(Point p) const {
        const Point* best = nullptr;
        for (const Point& corner : all_)
            if (!best || distance(corner, p) < distance(*best, p)) best = &corner;
        return best && distance(*best, p) < same_point.in_mm() ? *best : p;
    }
    const std::vector<Point>& all() const { return all_; }

private:
    void add(Point p) {
        for (const Point& corner : all_)
            if (distance(corner, p) < same_point.in_mm()) return;
        all_.push_back(p);
    }
    std::vector<Point> all_;
};

/// How far along an edge a point lies, 0 … 1, when it lies on it; at its ends it parts nothing.
std::optional<double> place_on(Point p, Point from, const Outline::Edge& edge) {
    const double room = same_point.in_mm();
    if (distance(p, from) < room || distance(p, edge.to) < room) return std::nullopt;
    if (!edge.centre) {
        const Vec along = Vec::of(edge.to) - Vec::of(from), to = Vec::of(p) - Vec::of(from);
        const double t = dot(to, along) / dot(along, along);
        if (t <= 0 || t >= 1 || std::abs(beside(to, {}, unit(along))) >= room) return std::nullopt;
        return t;
    }
    if (std::abs(distance(p, *edge.centre) - distance(from, *edge.centre)) >= room) return std::nullopt;
    const double t = sweep_of(from, {p, edge.centre, edge.clockwise}) / sweep_of(from, edge);
    return t < 1 ? std::optional(t) : std::nullopt;
}

void part(std::vector<EdgePiece>& pieces, std::size_t panel, Point from, const Outline::Edge& edge, const NetCorners& corners) {
    std::vector<std::pair<double, Point>> on;
    for (const Point& corner : corners.all())
        if (const auto place = place_on(corner, from, edge)) on.emplace_back(*place, corner);
    std::sort(on.begin(), on.end(), [](const auto& a, const auto& b) { return std::pair(a.first, key_of(a.second)) < std::pair(b.first, key_of(b.second)); });
    on.emplace_back(1, edge.to);
    for (const auto& [place, to] : on) {
        if (to != from) pieces.push_back({panel, from, {to, edge.centre, edge.clockwise}, std::nullopt});
        from = to;
    }
}

Point middle_of(Point from, const Outline::Edge& edge) {
    const Vec a = Vec::of(from), b = Vec::of(edge.to);
    if (!edge.centre) return ((a + b) * 0.5).point();
    const Vec c = Vec::of(*edge.centre), first = a - c;
    const double turn = sweep_of(from, edge) / 2 * (edge.clockwise ? -1 : 1);
    return (c + first * std::cos(turn) + first.left() * std::sin(turn)).point();
}

/// Curves whose centres were rounded otherwise still are one line when they meet in the middle.
bool one_line(const EdgePiece& a, const EdgePiece& b) {
    return distance(middle_of(a.from, a.edge), middle_of(b.from, b.edge)) < 2 * same_point.in_mm();
}

void pair_up(std::vector<EdgePiece>& pieces) {
    std::multimap<std::pair<PointKey, PointKey>, EdgePiece*> by_ends;
    for (EdgePiece& piece : pieces) by_ends.emplace(std::pair(key_of(piece.from), key_of(piece.edge.to)), &piece);
    for (EdgePiece& piece : pieces) {
        const auto [first, last] = by_ends.equal_range({key_of(piece.edge.to), key_of(piece.from)});
        for (auto it = first; it != last; ++it)
            if (it->second->panel != piece.panel && one_line(piece, *it->second)) piece.beyond = it->second->panel;
    }
}

}  // namespace

std::vector<EdgePiece> pieces_of(const std::vector<Panel>& panels) {
    const NetCorners corners(panels);
    std::vector<EdgePiece> pieces;
    for (std::size_t i = 0; i < panels.size(); ++i) {
        Point from = corners.nearest(panels[i].outline.start);
        for (Outline::Edge edge : panels[i].outline.edges) {
            edge.to = corners.nearest(edge.to);
            part(pieces, i, from, edge, corners);
            from = edge.to;
        }
    }
    pair_up(pieces);
    return pieces;
}

std::vector<SharedEdge> shared_edges(const std::vector<Panel>& panels) {
    std::vector<SharedEdge> shared;
    for (const EdgePiece& piece : pieces_of(panels))
        if (piece.beyond && piece.panel < *piece.beyond) shared.push_back({piece.panel, *piece.beyond, piece.from, piece.edge.to, !piece.edge.centre});
    return shared;
}

}  // namespace qw::parts
