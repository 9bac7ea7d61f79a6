// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_bound.h"

#include "parts/packing_boxes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <utility>

namespace qw::parts::packing {

namespace {

std::size_t most_by_area(const Region& shape, Size area, Length gap) {
    // Half the gap belongs to each copy, and the area is as much larger; what chords miss of the round corners is left out.
    const Length half = Length::units(gap.in_units() / 2) - 2 * chord_error;
    if (half <= Length()) return static_cast<std::size_t>(area.width.in_mm() * area.height.in_mm() / area_mm2(shape) + 1e-9);
    const double g = gap.in_mm();
    const double room = (area.width.in_mm() + g) * (area.height.in_mm() + g) - (1 - std::numbers::pi / 4) * g * g;
    return static_cast<std::size_t>(room / area_mm2(grown(shape, half)) + 1e-9);
}

using Span = std::pair<Length, Length>;

/// What an edge takes of the height of an upright strip; nothing when it does not enter it.
std::optional<Span> within(Point a, Point b, Span strip) {
    if (a.x > b.x) std::swap(a, b);
    if (b.x <= strip.first || a.x >= strip.second || a.x == b.x) {
        if (a.x <= strip.first || a.x >= strip.second || a.x != b.x) return {};
        return std::minmax(a.y, b.y);
    }
    const auto height_at = [&](Length x) { return x <= a.x ? a.y : x >= b.x ? b.y : a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x)); };
    const Length y1 = height_at(strip.first), y2 = height_at(strip.second);
    const Length rounding = Length::units(a.y == b.y ? 0 : 1);
    return Span(min(y1, y2) - rounding, max(y1, y2) + rounding);
}

/// The tallest rectangle in the region as wide as the strip.
Length tallest_in(const Region& region, Span strip) {
    std::vector<Span> taken;
    for (const Ring& ring : region)
        for (std::size_t i = 0; i < ring.size(); ++i)
            if (const auto span = within(ring[i], ring[(i + 1) % ring.size()], strip)) taken.push_back(*span);
    std::sort(taken.begin(), taken.end());
    Length tallest, reached;
    const Length middle = (strip.first + strip.second) / 2;
    for (std::size_t i = 0; i < taken.size(); ++i) {
        const Length height = taken[i].first - reached;
        if (i > 0 && height > tallest && holds(region, {middle, (taken[i].first + reached) / 2})) tallest = height;
        reached = i > 0 ? max(reached, taken[i].second) : taken[i].second;
    }
    return tallest;
}

/// Rectangles in the region that end at its corners, the largest first.
std::vector<Size> rectangles_in(const Region& region) {
    constexpr std::size_t most_stations = 28, most_rectangles = 12;
    std::vector<Length> corners, stations;
    for (const Ring& ring : region)
        for (const Point point : ring) corners.push_back(point.x);
    std::sort(corners.begin(), corners.end());
    corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
    const std::size_t step = (corners.size() + most_stations - 1) / most_stations;
    for (std::size_t i = 0; i < corners.size(); i += step) stations.push_back(corners[i]);
    if (stations.back() != corners.back()) stations.push_back(corners.back());
    std::vector<Size> found;
    for (std::size_t i = 0; i < stations.size(); ++i)
        for (std::size_t j = i + 1; j < stations.size(); ++j) {
            const Length height = tallest_in(region, {stations[i], stations[j]});
            if (height > Length()) found.push_back({stations[j] - stations[i], height});
        }
    std::stable_sort(found.begin(), found.end(), [](Size a, Size b) {
        return a.width.in_mm() * a.height.in_mm() > b.width.in_mm() * b.height.in_mm();
    });
    if (found.size() > most_rectangles) found.resize(most_rectangles);
    return found;
}

/// True if the segment has a point in the closed rectangle.
bool touches(const NoFit::Edge& edge, const Rect& rect) {
    if (edge.box.left > rect.right || edge.box.right < rect.left || edge.box.bottom > rect.top || edge.box.top < rect.bottom)
        return false;
    const std::array<std::int64_t, 4> sides{
        turn_of(edge.a, edge.b, {rect.left, rect.bottom}), turn_of(edge.a, edge.b, {rect.right, rect.bottom}),
        turn_of(edge.a, edge.b, {rect.right, rect.top}), turn_of(edge.a, edge.b, {rect.left, rect.top})};
    return *std::min_element(sides.begin(), sides.end()) <= 0 && *std::max_element(sides.begin(), sides.end()) >= 0;
}

}  // namespace

std::size_t most_copies(const Region& shape, Size area, Length gap) {
    std::size_t most = most_by_area(shape, area, gap);
    for (const Size rectangle : rectangles_in(shape)) most = std::min(most, most_boxes(area, rectangle, gap));
    return most;
}

bool one_at_most(const Region& shape, Size area, Length gap, const std::vector<int>& turns) {
    const Region smaller = outer_rings(grown(shape, Length::mm(-0.001)));
    constexpr std::size_t too_costly = 20000;
    if (smaller.empty() || edges_in_sum(smaller, reflected(smaller)) > too_costly) return false;
    const Pairs pairs = pairs_of(smaller, disc_inside(gap), turns);
    for (const int stays : turns)
        for (const int other : turns) {
            const Size a = bounds(turned(smaller, stays)).size(), b = bounds(turned(smaller, other)).size();
            const Rect places{a.width - area.width, a.height - area.height, area.width - b.width, area.height - b.height};
            const Rect wider = places.inset(Length::units(-2));
            const NoFit blocked(pairs[stays][other]);
            if (!blocked.blocks(wider.centre())) return false;
            for (const NoFit::Edge& edge : blocked.edges())
                if (touches(edge, wider)) return false;
        }
    return true;
}

}  // namespace qw::parts::packing
