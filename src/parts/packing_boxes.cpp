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

/// What is left beyond the longest row can stay empty: boxes pushed to the left and down lie at such lengths.
Length longest_within(const std::vector<Length>& rows, Length length) {
    return *(std::upper_bound(rows.begin(), rows.end(), length) - 1);
}

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

/// Block sizes are counted in rows: the numbers of the lengths that rows of boxes can have, 0 for nothing.
class Blocks {
public:
    Blocks(Size area, Size box, std::size_t enough, std::int64_t steps)
        : box_(box), enough_(static_cast<std::int64_t>(enough)), steps_(steps),
          rows_(rows_up_to(max(area.width, area.height), box)) {
        for (std::size_t i = 0; i < rows_.size(); ++i)
            for (std::size_t j = 0; j <= i; ++j) less_.push_back(row_within(rows_[i] - rows_[j]));
    }

    std::vector<Box> run(Size area) {
        const Rows whole{row_within(area.width), row_within(area.height)};
        for (int depth = 0; depth <= 4 && count(whole, depth) < enough_ && steps_ > 0; ++depth) {}
        std::vector<Box> boxes;
        place(whole, {}, boxes);
        return boxes;
    }

private:
    struct Rows {
        std::size_t x = 0, y = 0;
        friend auto operator<=>(const Rows&, const Rows&) = default;
    };
    struct Split {
        std::int64_t count = 0;
        int depth = -1;
        bool crosswise = false;        ///< without blocks: all boxes turned
        bool blocks = false;
        std::size_t x1 = 0, x2 = 0, y1 = 0, y2 = 0;
    };
    struct Block {
        std::size_t left = 0, bottom = 0;
        Rows size;
    };

    std::size_t row_within(Length length) const {
        return static_cast<std::size_t>(std::upper_bound(rows_.begin(), rows_.end(), length) - rows_.begin() - 1);
    }
    /// The longest row in what is left of one when another is taken from it.
    std::size_t less(std::size_t row, std::size_t taken) const { return less_[row * (row + 1) / 2 + taken]; }
    Size size_of(Rows rows) const { return {rows_[rows.x], rows_[rows.y]}; }
    std::int64_t bound(Rows rows) const {
        return static_cast<std::int64_t>(rows_[rows.x] / box_.width * (rows_[rows.y] / box_.height) + 1e-9);
    }
    std::int64_t count_in_grid(Size area, bool crosswise) const {
        const Size box = crosswise ? box_.turned() : box_;
        return fitting(area.width, box.width) * fitting(area.height, box.height);
    }
    /// Lower left, lower right, upper right, upper left and middle; they do not overlap, any may be empty.
    std::array<Block, 5> blocks_of(Rows area, const Split& s) const {
        return {Block{0, 0, {s.x2, s.y1}}, Block{s.x2, 0, {less(area.x, s.x2), s.y2}},
                Block{s.x1, s.y2, {less(area.x, s.x1), less(area.y, s.y2)}}, Block{0, s.y1, {s.x1, less(area.y, s.y1)}},
                Block{s.x1, s.y1, {less(s.x2, s.x1), less(s.y2, s.y1)}}};
    }

    std::int64_t count(Rows area, int depth);
    void split(Rows area, Split& best, int depth);
    void try_blocks(Rows area, const Split& blocks, Split& best, int depth);
    void place(Rows area, Point at, std::vector<Box>& boxes);

    Size box_;
    std::int64_t enough_, steps_;
    std::vector<Length> rows_;
    std::vector<std::size_t> less_;
    std::map<Rows, Split> known_;
};

std::int64_t Blocks::count(Rows area, int depth) {
    if (area.x == 0 || area.y == 0) return 0;
    Split& known = known_[area];       // stays where it is in a map
    if (known.depth >= depth) return known.count;
    if (known.depth < 0) {
        const std::int64_t along = count_in_grid(size_of(area), false), across = count_in_grid(size_of(area), true);
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

void Blocks::split(Rows area, Split& best, int depth) {
    Split blocks;
    blocks.blocks = true;
    blocks.depth = depth;
    const std::int64_t most = bound(area);
    for (blocks.x1 = 0; blocks.x1 <= area.x; ++blocks.x1)
        for (blocks.x2 = blocks.x1; blocks.x2 <= area.x; ++blocks.x2)
            for (blocks.y1 = 0; blocks.y1 <= area.y; ++blocks.y1)
                for (blocks.y2 = blocks.y1; blocks.y2 <= area.y; ++blocks.y2) {
                    if (best.count >= most || --steps_ <= 0) return;
                    try_blocks(area, blocks, best, depth);
                }
}

void Blocks::try_blocks(Rows area, const Split& blocks, Split& best, int depth) {
    const auto parts = blocks_of(area, blocks);
    std::int64_t at_most = 0;
    for (const Block& part : parts) {
        if (part.size == area) return;
        at_most += bound(part.size);
    }
    for (std::size_t i = 0; i < parts.size() && at_most > best.count; ++i)
        at_most += count(parts[i].size, depth - 1) - bound(parts[i].size);
    if (at_most <= best.count) return;
    best = blocks;
    best.count = at_most;
}

void Blocks::place(Rows area, Point at, std::vector<Box>& boxes) {
    const auto found = known_.find(area);
    if (found == known_.end()) return;
    const Split& split = found->second;
    if (split.blocks) {
        for (const Block& part : blocks_of(area, split))
            place(part.size, {at.x + rows_[part.left], at.y + rows_[part.bottom]}, boxes);
        return;
    }
    const auto grid = grid_on(size_of(area), box_, split.crosswise, at);
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
    constexpr int parts = 32;
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
    if (gap == Length() && !countless(area, box)) {
        const auto rows = rows_up_to(max(area.width, area.height), box);
        area = {longest_within(rows, area.width), longest_within(rows, area.height)};
    }
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
