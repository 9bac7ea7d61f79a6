// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/arcs.h"

#include "parts/outline.h"
#include "parts/plane.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace qw::parts {

namespace {

double angle_of(Vec v) { return std::atan2(v.y, v.x); }

/// The ends of chords on the way counter-clockwise, without `from` and `to`.
std::vector<Point> between(Point from, Point to, Point centre, double sweep) {
    const Vec middle = Vec::of(centre), first = Vec::of(from) - middle, last = Vec::of(to) - middle;
    const double radius = std::max(first.length(), last.length());
    // A chord leaves its arc by r · (1 − cos(half its angle)).
    const double step = 2 * std::acos(std::max(0.0, 1 - chord_error.in_mm() / std::max(radius, chord_error.in_mm())));
    const int count = std::max(1, static_cast<int>(std::ceil(sweep / step - 1e-9)));
    std::vector<Point> points;
    for (int i = 1; i < count; ++i) {
        const double part = double(i) / count, angle = angle_of(first) + sweep * part;
        const double r = first.length() + (last.length() - first.length()) * part;
        points.push_back((middle + Vec{std::cos(angle), std::sin(angle)} * r).point());
    }
    return points;
}

}  // namespace

std::optional<Circle> circle_through(Point from, Point through, Point to) {
    const Vec a = Vec::of(from), b = Vec::of(through) - a, c = Vec::of(to) - a;
    if (b.length() < same_point.in_mm() || c.length() < same_point.in_mm() || distance(through, to) < same_point.in_mm()) return std::nullopt;
    if (std::abs(beside(b, {}, unit(c))) < same_point.in_mm()) return std::nullopt;
    // Where the perpendicular bisectors of two chords meet.
    const double twice = 2 * cross(b, c), bb = dot(b, b), cc = dot(c, c);
    const Vec centre{(c.y * bb - b.y * cc) / twice, (b.x * cc - c.x * bb) / twice};
    return Circle{(a + centre).point(), twice < 0};
}

double sweep_of(Point from, const Outline::Edge& edge) {
    if (!edge.centre) return 0;
    const Vec middle = Vec::of(*edge.centre), first = Vec::of(from) - middle, last = Vec::of(edge.to) - middle;
    double turn = angle_of(last) - angle_of(first);
    if (edge.clockwise) turn = -turn;
    while (turn <= 0) turn += 2 * std::numbers::pi;
    return turn;
}

void add_chords(Ring& ring, Point from, const Outline::Edge& edge) {
    if (edge.centre) {
        const double sweep = sweep_of(from, edge);
        std::vector<Point> points = edge.clockwise ? between(edge.to, from, *edge.centre, sweep) : between(from, edge.to, *edge.centre, sweep);
        if (edge.clockwise) std::reverse(points.begin(), points.end());
        ring.insert(ring.end(), points.begin(), points.end());
    }
    ring.push_back(edge.to);
}

Region Outline::region() const {
    Ring ring;
    Point at = start;
    for (const Edge& edge : edges) {
        add_chords(ring, at, edge);
        at = edge.to;
    }
    return {ring};
}

Outline reversed(const Outline& outline) {
    Outline back;
    back.start = outline.start;
    for (std::size_t i = outline.edges.size(); i-- > 0;) {
        Outline::Edge edge = outline.edges[i];
        edge.to = i ? outline.edges[i - 1].to : outline.start;
        if (edge.centre) edge.clockwise = !edge.clockwise;
        back.edges.push_back(edge);
    }
    return back;
}

}  // namespace qw::parts
