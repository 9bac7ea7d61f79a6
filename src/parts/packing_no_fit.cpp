// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_no_fit.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace qw::parts::packing {

namespace {

struct Way {
    std::int64_t x = 0, y = 0;
};

Way between(Point a, Point b) { return {(b.x - a.x).in_units(), (b.y - a.y).in_units()}; }
std::int64_t cross(Way u, Way v) { return u.x * v.y - u.y * v.x; }
std::int64_t dot(Way u, Way v) { return u.x * v.x + u.y * v.y; }

/// `way` lies after `from` and not after `to`, counter-clockwise, the two less than half a turn apart.
bool after_up_to(Way from, Way way, Way to) {
    return cross(from, way) > 0 && (cross(way, to) > 0 || (cross(way, to) == 0 && dot(way, to) > 0));
}
/// … not before `from` and before `to`.
bool from_until(Way from, Way way, Way to) {
    return cross(way, to) > 0 && (cross(from, way) > 0 || (cross(from, way) == 0 && dot(from, way) > 0));
}

/// How often the outline turns through `way` at a corner: 1, -1 where it turns right, else 0. Equal ways of the two
/// outlines count as if the second one were turned a trace to the left.
int passes(const Ring& ring, std::size_t corner, Way way, bool second) {
    const std::size_t n = ring.size();
    const Way in = between(ring[(corner + n - 1) % n], ring[corner]);
    const Way out = between(ring[corner], ring[(corner + 1) % n]);
    if (cross(in, out) > 0) return second ? after_up_to(in, way, out) : from_until(in, way, out);
    return -(second ? after_up_to(out, way, in) : from_until(out, way, in));
}

struct Leg {
    std::size_t from = 0, to = 0;      ///< corner of a × corners of b + corner of b
    friend auto operator<=>(const Leg&, const Leg&) = default;
};

std::vector<Leg> legs_of(const Ring& a, const Ring& b) {
    std::vector<Leg> legs;
    const auto add = [&](std::size_t from, std::size_t to, int sign) {
        if (sign > 0) legs.push_back({from, to});
        if (sign < 0) legs.push_back({to, from});
    };
    for (std::size_t i = 0; i < a.size(); ++i) {
        const std::size_t next = (i + 1) % a.size();
        for (std::size_t j = 0; j < b.size(); ++j)
            add(i * b.size() + j, next * b.size() + j, passes(b, j, between(a[i], a[next]), true));
    }
    for (std::size_t j = 0; j < b.size(); ++j) {
        const std::size_t next = (j + 1) % b.size();
        for (std::size_t i = 0; i < a.size(); ++i)
            add(i * b.size() + j, i * b.size() + next, passes(a, i, between(b[j], b[next]), false));
    }
    std::sort(legs.begin(), legs.end());
    return legs;
}

/// As many legs lead to a corner as from it, so that walking on closes a ring every time.
Region rings_of(const std::vector<Leg>& legs, const Ring& a, const Ring& b) {
    Region rings;
    std::vector<bool> used(legs.size());
    const auto next_from = [&](std::size_t corner) {
        auto leg = std::lower_bound(legs.begin(), legs.end(), Leg{corner, 0});
        while (leg != legs.end() && leg->from == corner && used[static_cast<std::size_t>(leg - legs.begin())]) ++leg;
        return leg != legs.end() && leg->from == corner ? static_cast<std::size_t>(leg - legs.begin()) : legs.size();
    };
    for (std::size_t first = 0; first < legs.size(); ++first) {
        if (used[first]) continue;
        Ring ring;
        for (std::size_t leg = first; leg != legs.size(); leg = next_from(legs[leg].to)) {
            used[leg] = true;
            const Point pa = a[legs[leg].to / b.size()], pb = b[legs[leg].to % b.size()];
            ring.push_back({pa.x + pb.x, pa.y + pb.y});
        }
        rings.push_back(std::move(ring));
    }
    return rings;
}

bool is_point(const Region& region) { return region.size() == 1 && region[0].size() == 1; }

Ring disc(Length radius, bool outside) {
    if (radius <= (outside ? Length() : Length::units(100))) return {Point{}};
    constexpr int corners = 16;        // at most 1.9 % too far, and exact along the axes and at 45°
    constexpr double step = 2 * std::numbers::pi / corners;
    const double r = static_cast<double>(radius.in_units());
    // Outside the sides are tangents, the axes' own exact and the others two units off, for the rounding of what is computed
    // from them; inside the corners lie on the circle, again with those on the axes exact.
    const double reach = outside ? r / std::cos(step / 2) + 2 : r - 2;
    Ring quarter;
    for (int i = 0; i < corners / 4; ++i) {
        const double angle = (outside ? i + 0.5 : i) * step, x = reach * std::cos(angle), y = reach * std::sin(angle);
        if (!outside)
            quarter.push_back(i == 0 ? Point{radius, {}} : Point{Length::units(std::llround(x)), Length::units(std::llround(y))});
        else
            quarter.push_back({min(radius, Length::units(std::llround(std::ceil(x)))), min(radius, Length::units(std::llround(std::ceil(y))))});
    }
    std::vector<Point> all;
    for (int turn = 0; turn < 4; ++turn)
        for (const Point point : quarter) all.push_back(turned(point, turn));
    return convex_hull(all);
}

}  // namespace

Region sum_of(const Region& a, const Region& b) {
    if (is_point(a)) return moved(b, a[0][0].x, a[0][0].y);
    if (is_point(b)) return moved(a, b[0][0].x, b[0][0].y);
    std::vector<Region> sums;
    for (const Ring& one : a)
        for (const Ring& other : b) sums.push_back(united(rings_of(legs_of(one, other), one, other), {}));
    return sums.size() == 1 ? sums[0] : united(sums);
}

std::size_t edges_in_sum(const Region& a, const Region& b) {
    std::size_t edges = 0;
    for (const Ring& one : a)
        for (const Ring& other : b) edges += legs_of(one, other).size();
    return edges;
}

Ring disc_outside(Length radius) { return disc(radius, true); }
Ring disc_inside(Length radius) { return disc(radius, false); }

Region reflected(const Region& region) { return turned(region, 2); }

Pairs pairs_of(const Region& shape, const Ring& disc, const std::vector<int>& turns) {
    std::array<Region, 4> by_difference;
    const Region wide = sum_of(shape, {disc});
    const auto of_difference = [&](int difference) -> const Region& {
        Region& known = by_difference[difference];
        if (known.empty() && difference == 3) {  // the other way round of a difference of one turn
            if (by_difference[1].empty()) by_difference[1] = sum_of(wide, reflected(turned(shape, 1)));
            known = turned(by_difference[1], 1);
        } else if (known.empty()) {
            known = sum_of(wide, reflected(turned(shape, difference)));
        }
        return known;
    };
    Pairs pairs;
    for (const int stays : turns)
        for (const int other : turns) {
            const Rect a = bounds(turned(shape, stays)), b = bounds(turned(shape, other));
            pairs[stays][other] = moved(turned(of_difference((other + 4 - stays) % 4), stays), b.left - a.left, b.bottom - a.bottom);
        }
    return pairs;
}

NoFit::NoFit(const Region& area) : box_(bounds(area)) {
    for (const Ring& ring : area)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            const Rect box{min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)};
            edges_.push_back({a, b, box, std::hypot((b.x - a.x).in_units(), (b.y - a.y).in_units()), a.x == b.x || a.y == b.y});
        }
}

bool NoFit::blocks(Point offset) const {
    if (offset.x <= box_.left || offset.x >= box_.right || offset.y <= box_.bottom || offset.y >= box_.top) return false;
    const Rect here{offset.x, offset.y, offset.x, offset.y};
    bool inside = false;
    for (const Edge& edge : edges_) {
        if (edge.straight) {
            if (edge.box.holds(here)) return false;
        } else if (edge.box.holds(here, Length::units(1)) &&
                   std::abs(static_cast<double>(turn_of(edge.a, edge.b, offset))) <= edge.length) {
            return false;
        }
        if ((edge.a.y <= offset.y) == (edge.b.y <= offset.y)) continue;
        const bool upward = edge.b.y > edge.a.y;
        if ((turn_of(edge.a, edge.b, offset) > 0) == upward) inside = !inside;
    }
    return inside;
}

}  // namespace qw::parts::packing
