// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace qw::parts::packing {

namespace {

bool lower_left_first(Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; }

double distance_from_line(Point point, Point a, Point b) {
    const double length = std::hypot((b.x - a.x).in_units(), (b.y - a.y).in_units());
    return std::abs(static_cast<double>(turn_of(a, b, point))) / length;
}

/// Where the lines a-b and d-c, both drawn on beyond b and c, meet; nothing when they part.
std::optional<Point> tip(Point a, Point b, Point c, Point d) {
    const double ux = static_cast<double>((b.x - a.x).in_units()), uy = static_cast<double>((b.y - a.y).in_units());
    const double vx = static_cast<double>((d.x - c.x).in_units()), vy = static_cast<double>((d.y - c.y).in_units());
    const double turn = ux * vy - uy * vx;
    if (turn <= 0) return {};
    const double wx = static_cast<double>((c.x - b.x).in_units()), wy = static_cast<double>((c.y - b.y).in_units());
    const double along = (wx * vy - wy * vx) / turn;
    if (along < 0) return {};
    return Point{b.x + Length::units(std::llround(ux * along)), b.y + Length::units(std::llround(uy * along))};
}

/// The cheapest step that takes a corner away without taking area away.
struct Step {
    double cost = 0;                   ///< how far the outline moves, in units
    std::size_t corner = 0;
    std::optional<Point> tip;          ///< takes the place of `corner` and the next one; nothing: `corner` goes
};

std::optional<Step> cheapest(const Ring& ring, const Rect& bounds, double at_most) {
    const std::size_t n = ring.size();
    std::optional<Step> best;
    for (std::size_t i = 0; i < n && n > 3; ++i) {
        const Point before = ring[(i + n - 1) % n], here = ring[i], next = ring[(i + 1) % n], after = ring[(i + 2) % n];
        Step step{0, i, {}};
        if (turn_of(before, here, next) <= 0) {
            step.cost = distance_from_line(here, before, next);
        } else if (turn_of(here, next, after) > 0) {
            step.tip = tip(before, here, next, after);
            if (!step.tip || !bounds.holds(Rect{step.tip->x, step.tip->y, step.tip->x, step.tip->y})) continue;
            step.cost = distance_from_line(*step.tip, here, next);
        } else {
            continue;
        }
        if (step.cost <= at_most && (!best || step.cost < best->cost)) best = step;
    }
    return best;
}

Ring reduced(Ring ring, const Rect& bounds, double at_most) {
    while (const auto step = cheapest(ring, bounds, at_most)) {
        if (step->tip) ring[(step->corner + 1) % ring.size()] = *step->tip;
        ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(step->corner));
    }
    return ring;
}

/// Positive for a ring that goes round counter-clockwise.
double signed_mm2(const Ring& ring) {
    double twice = 0;
    for (std::size_t i = 2; i < ring.size(); ++i) twice += static_cast<double>(turn_of(ring[0], ring[i - 1], ring[i]));
    return twice / 2 * Length::units(1).in_mm() * Length::units(1).in_mm();
}

/// Outlines that came to cross themselves or each other are no longer what they were taken for.
bool sound(const Region& reduced, const Region& rings) {
    const Region both = united(reduced, rings);
    double drawn = 0, margin = 0;
    for (const Ring& ring : reduced) {
        drawn += signed_mm2(ring);
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            margin += std::hypot((b.x - a.x).in_mm(), (b.y - a.y).in_mm()) * Length::units(4).in_mm();
        }
    }
    return both.size() == reduced.size() && std::abs(area_mm2(both) - drawn) <= margin;
}

Region smoothed(const Region& rings, std::size_t corners) {
    static constexpr std::array<Length, 5> tolerances{Length::mm(0.02), Length::mm(0.05), Length::mm(0.1), Length::mm(0.2),
                                                      Length::mm(0.4)};
    const Rect box = bounds(rings);
    Region result = rings;
    for (const Length tolerance : tolerances) {
        if (corners_of(result) <= corners) break;
        Region fewer;
        for (const Ring& ring : rings) fewer.push_back(reduced(ring, box, static_cast<double>(tolerance.in_units())));
        if (sound(fewer, rings)) result = std::move(fewer);
    }
    return result;
}

Ring from_first_corner(Ring ring) {
    std::rotate(ring.begin(), std::min_element(ring.begin(), ring.end(), lower_left_first), ring.end());
    return ring;
}

Region in_order(const Region& region) {
    Region result;
    for (const Ring& ring : region) result.push_back(from_first_corner(ring));
    std::sort(result.begin(), result.end(), [](const Ring& a, const Ring& b) {
        return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(), lower_left_first);
    });
    return result;
}

}  // namespace

std::int64_t turn_of(Point a, Point b, Point c) {
    return (b.x - a.x).in_units() * (c.y - a.y).in_units() - (b.y - a.y).in_units() * (c.x - a.x).in_units();
}

Point turned(Point point, int quarter_turns) {
    for (int i = 0; i < quarter_turns % 4; ++i) point = {-point.y, point.x};
    return point;
}

Region turned(const Region& region, int quarter_turns) {
    Region result = region;
    for (Ring& ring : result)
        for (Point& point : ring) point = turned(point, quarter_turns);
    return result;
}

Region outer_rings(const Region& region) {
    Region result;
    for (const Ring& given : region) {
        if (signed_mm2(given) <= 0) continue;
        Ring ring;
        for (std::size_t i = 0; i < given.size(); ++i) {
            const Point before = ring.empty() ? given.back() : ring.back();
            if (turn_of(before, given[i], given[(i + 1) % given.size()]) != 0) ring.push_back(given[i]);
        }
        if (ring.size() >= 3) result.push_back(ring);
    }
    return result;
}

Ring convex_hull(std::vector<Point> points) {
    std::sort(points.begin(), points.end(), lower_left_first);
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) return points;
    Ring hull;
    for (int way = 0; way < 2; ++way) {
        const std::size_t start = hull.size();
        for (const Point point : points) {
            while (hull.size() >= start + 2 && turn_of(hull[hull.size() - 2], hull.back(), point) <= 0) hull.pop_back();
            hull.push_back(point);
        }
        hull.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return hull;
}

std::size_t corners_of(const Region& region) {
    std::size_t corners = 0;
    for (const Ring& ring : region) corners += ring.size();
    return corners;
}

Region with_fewer_corners(const Region& rings, std::size_t corners) {
    Region result = smoothed(rings, corners);
    if (corners_of(result) <= 4 * corners) return result;
    std::vector<Point> all;
    for (const Ring& ring : rings) all.insert(all.end(), ring.begin(), ring.end());
    return smoothed({convex_hull(all)}, corners);
}

bool same_area(const Region& a, const Region& b) { return in_order(a) == in_order(b); }

}  // namespace qw::parts::packing
