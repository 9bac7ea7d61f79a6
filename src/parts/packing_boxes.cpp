// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_boxes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace qw::parts::packing {

namespace {

/// All lengths up to `most` that boxes in a row can have.
std::vector<Length> rows_up_to(Length most, Size box) {
    std::set<Length> sums;
    for (Length a; a <= most; a += box.width)
        for (Length b = a; b <= most; b += box.height) sums.insert(b);
    return {sums.begin(), sums.end()};
}

std::int64_t fitting(Length length, Length piece) { return length.in_units() / piece.in_units(); }

/// Boxes so small that looking for better than rows of them would not end soon.
bool countless(Size area, Size box) {
    const Length longest = max(area.width, area.height);
    return (longest / box.width) * (longest / box.height) > 2e4;
}

std::vector<Box> grid_on(Size area, Size box, bool crosswise, Point at) {
    if (crosswise) box = box.turned();
    std::vector<Box> boxes;
    for (Length y; y + box.height <= area.height; y += box.height)
        for (Length x; x + box.width <= area.width; x += box.width) boxes.push_back({crosswise, {at.x + x, at.y + y}});
    return boxes;
}

class Blocks {
public:
    Blocks(Size area, Size box, std::size_t enough, std::int64_t steps)
        : box_(box), enough_(static_cast<std::int64_t>(enough)), steps_(steps),
          rows_(rows_up_to(max(area.width, area.height), box)) {}

    std::vector<Box> run(Size area) {
        std::int64_t best = 0;
        for (int depth = 0; depth <= 4 && best < enough_ && steps_ > 0; ++depth) best = count(area, depth);
        std::vector<Box> boxes;
        place(area, {}, boxes);
        return boxes;
    }

private:
    struct Split {
        std::int64_t count = 0;
        int depth = -1;
        bool crosswise = false;        ///< without blocks: all boxes turned
        bool blocks = false;
        Length x1, x2, y1, y2;
    };
    using Key = std::pair<Length, Length>;

    /// The longest row within: nothing is lost by ending there.
    Length used(Length length) const { return *(std::upper_bound(rows_.begin(), rows_.end(), length) - 1); }
    Size used(Size area) const { return {used(area.width), used(area.height)}; }
    std::int64_t bound(Size area) const {
        return static_cast<std::int64_t>(area.width.in_mm() * area.height.in_mm() / (box_.width.in_mm() * box_.height.in_mm()) + 1e-9);
    }
    std::int64_t count_in_grid(Size area, bool crosswise) const {
        const Size box = crosswise ? box_.turned() : box_;
        return fitting(area.width, box.width) * fitting(area.height, box.height);
    }

    std::int64_t count(Size given, int depth);
    void split(Size area, Split& best, int depth);
    void try_blocks(Size area, const Split& blocks, Split& best, int depth);
    void place(Size given, Point at, std::vector<Box>& boxes);

    /// Lower left, lower right, upper right, upper left, middle; two may overlap nowhere, any may be empty.
    static std::array<Rect, 5> blocks_of(Size area, const Split& s) {
        return {Rect{{}, {}, s.x2, s.y1}, Rect{s.x2, {}, area.width, s.y2}, Rect{s.x1, s.y2, area.width, area.height},
                Rect{{}, s.y1, s.x1, area.height}, Rect{s.x1, s.y1, s.x2, s.y2}};
    }

    Size box_;
    std::int64_t enough_, steps_;
    std::vector<Length> rows_;
    std::map<Key, Split> known_;
};

std::int64_t Blocks::count(Size given, int depth) {
    const Size area = used(given);
    if (area.width == Length() || area.height == Length()) return 0;
    const Key key{area.width, area.height};
    Split& known = known_[key];        // stays where it is in a map
    if (known.depth >= depth) return known.count;
    if (known.depth < 0) {
        const std::int64_t along = count_in_grid(area, false), across = count_in_grid(area, true);
        known.count = std::max(along, across);
        known.crosswise = across > along;
    }
    known.depth = depth;
    if (depth > 0 && known.count < bound(area) && steps_ > 0) {
        Split best = known;
        split(area, best, depth);
        known = best;
    }
    return known.count;
}

void Blocks::split(Size area, Split& best, int depth) {
    const auto end_x = std::upper_bound(rows_.begin(), rows_.end(), area.width);
    const auto end_y = std::upper_bound(rows_.begin(), rows_.end(), area.height);
    Split blocks;
    blocks.blocks = true;
    blocks.depth = depth;
    const std::int64_t most = bound(area);
    for (auto x1 = rows_.begin(); x1 != end_x; ++x1)
        for (auto x2 = x1; x2 != end_x; ++x2)
            for (auto y1 = rows_.begin(); y1 != end_y; ++y1)
                for (auto y2 = y1; y2 != end_y; ++y2) {
                    if (best.count >= most || --steps_ <= 0) return;
                    if ((*x1 == Length() && *x2 == Length()) || (*y1 == Length() && *y2 == Length())) continue;
                    blocks.x1 = *x1, blocks.x2 = *x2, blocks.y1 = *y1, blocks.y2 = *y2;
                    try_blocks(area, blocks, best, depth);
                }
}

void Blocks::try_blocks(Size area, const Split& blocks, Split& best, int depth) {
    std::int64_t at_most = 0;
    const auto parts = blocks_of(area, blocks);
    for (const Rect& part : parts)
        if (part.size() == area) return;
    for (const Rect& part : parts) at_most += part.empty() ? 0 : bound(used(part.size()));
    if (at_most <= best.count) return;
    for (const Rect& part : parts) {
        if (part.empty()) continue;
        at_most += count(part.size(), depth - 1) - bound(used(part.size()));
        if (at_most <= best.count) return;
    }
    best = blocks;
    best.count = at_most;
}

void Blocks::place(Size given, Point at, std::vector<Box>& boxes) {
    const Size area = used(given);
    const auto found = known_.find({area.width, area.height});
    if (found == known_.end()) return;
    const Split& split = found->second;
    if (split.blocks) {
        for (const Rect& part : blocks_of(area, split))
            if (!part.empty()) place(part.size(), {at.x + part.left, at.y + part.bottom}, boxes);
        return;
    }
    const auto grid = grid_on(area, box_, split.crosswise, at);
    boxes.insert(boxes.end(), grid.begin(), grid.end());
}

/// weight_n · n + weight_m · m ≤ limit
struct Limit {
    double weight_n = 0, weight_m = 0, limit = 0;
};

/// The edges of the convex hull of what fits a line: n pieces of length a, m of length b.
std::vector<Limit> hull_limits(Length line, Length a, Length b) {
    std::vector<std::pair<double, double>> hull;
    for (std::int64_t n = 0; n <= fitting(line, a); ++n) {
        const std::pair<double, double> next(static_cast<double>(n), static_cast<double>(fitting(line - a * static_cast<double>(n), b)));
        const auto bends_outward = [&] {
            const auto &p = hull[hull.size() - 2], &q = hull.back();
            return (q.first - p.first) * (next.second - p.second) - (q.second - p.second) * (next.first - p.first) < 0;
        };
        while (hull.size() >= 2 && !bends_outward()) hull.pop_back();
        hull.push_back(next);
    }
    std::vector<Limit> limits{{1, 0, hull.back().first}};
    if (hull.size() == 1) limits.push_back({0, 1, hull[0].second});
    for (std::size_t i = 1; i < hull.size(); ++i) {
        const double n = hull[i - 1].second - hull[i].second, m = hull[i].first - hull[i - 1].first;
        limits.push_back({n, m, n * hull[i].first + m * hull[i].second});
    }
    limits.push_back({0, 1, hull.front().second});
    return limits;
}

/// Limits on how many boxes lie lengthwise (n) and crosswise (m), from lines along the width.
void add_limits(Size area, Size box, Length gap, std::vector<Limit>& limits, bool swap) {
    constexpr int parts = 8;
    for (int part = 0; part <= parts; ++part) {
        const Length taller = Length::units(gap.in_units() * part / parts);
        const double squared = std::pow(gap.in_units(), 2) - std::pow(taller.in_units(), 2);
        const Length between = Length::units(static_cast<std::int64_t>(std::sqrt(std::max(squared, 0.0))));
        const double height = (area.height + taller) / Length::units(1);
        for (Limit limit : hull_limits(area.width + between, box.width + between, box.height + between)) {
            limit.weight_n *= (box.height + taller) / Length::units(1) / height;
            limit.weight_m *= (box.width + taller) / Length::units(1) / height;
            if (swap) std::swap(limit.weight_n, limit.weight_m);
            limits.push_back(limit);
        }
        if (gap == Length()) break;
    }
}

}  // namespace

std::vector<Box> boxes_on(Size area, Size box, std::size_t enough, std::int64_t steps) {
    if (!countless(area, box)) return Blocks(area, box, enough, steps).run(area);
    auto along = grid_on(area, box, false, {}), across = grid_on(area, box, true, {});
    return across.size() > along.size() ? across : along;
}

std::size_t most_boxes(Size area, Size box, Length gap) {
    std::vector<Limit> limits;
    add_limits(area, box, gap, limits, false);
    add_limits(area.turned(), box, gap, limits, true);
    double most = 0;
    for (double n = 0;; ++n) {
        double m = -1;
        bool first = true;
        for (const Limit& limit : limits) {
            const double left = limit.limit - limit.weight_n * n;
            if (left < -1e-9) return static_cast<std::size_t>(most);
            if (limit.weight_m <= 0) continue;
            const double here = std::floor(left / limit.weight_m + 1e-9);
            m = first ? here : std::min(m, here);
            first = false;
        }
        most = std::max(most, n + m);
    }
}

}  // namespace qw::parts::packing
