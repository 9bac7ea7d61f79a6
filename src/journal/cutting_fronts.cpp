// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_fronts.h"

#include <algorithm>
#include <tuple>

namespace qw::journal::cutting {

namespace {

/// Both fronts' sizes side by side: for every height that one of them has, the narrowest of each that is no higher.
/// From the narrowest and highest on; the higher of the two is the one to be exchanged for a lower one.
void put_beside(const Fronts::Front& a, const Fronts::Front& b, std::size_t first, Fronts::Front& out) {
    for (std::uint32_t i = 0, j = 0; i < a.size() && j < b.size();) {
        const Length ha = a[i].height, hb = b[j].height;
        const int cuts = a[i].cuts + b[j].cuts + 1 + (ha != hb);
        out.push_back({a[i].width + b[j].width, max(ha, hb), static_cast<std::uint16_t>(cuts), false, static_cast<std::uint16_t>(first), i, j});
        if (ha >= hb) ++i;
        if (hb >= ha) ++j;
    }
}

/// The same on each other, from the widest and lowest on; turned round so that it rises in width, too.
void put_atop(const Fronts::Front& a, const Fronts::Front& b, std::size_t first, Fronts::Front& out) {
    auto i = static_cast<std::int64_t>(a.size()) - 1, j = static_cast<std::int64_t>(b.size()) - 1;
    while (i >= 0 && j >= 0) {
        const Block &x = a[static_cast<std::size_t>(i)], &y = b[static_cast<std::size_t>(j)];
        const int cuts = x.cuts + y.cuts + 1 + (x.width != y.width);
        out.push_back({max(x.width, y.width), x.height + y.height, static_cast<std::uint16_t>(cuts), true, static_cast<std::uint16_t>(first),
                       static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(j)});
        if (x.width >= y.width) --i;
        if (y.width >= x.width) --j;
    }
    std::reverse(out.begin(), out.end());
}

/// What one cut through the whole board takes off beside a block, or above it.
double strip_beside(const Block& block, const HeldBoard& board) { return area_of({board.size.width - block.width, board.size.height}); }
double strip_above(const Block& block, const HeldBoard& board) { return area_of({board.size.width, board.size.height - block.height}); }

}  // namespace

Selections::Selections(const std::vector<Sort>& sorts) {
    for (const Sort& sort : sorts) {
        unit_.push_back(count_);
        base_.push_back(sort.pieces.size() + 1);
        // Beyond the bound the exact number is of no use, and it must not overflow.
        count_ = std::min(count_ * std::min(base_.back(), most + 1), most + 1);
    }
}

Fronts::Fronts(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards)
    : sorts_(sorts), boards_(boards), selections_(sorts), fronts_(selections_.count()) {
    for (std::size_t selection = 1; selection < fronts_.size(); ++selection) {
        const double needed = area(selection);
        if (std::none_of(boards_.begin(), boards_.end(), [&](const HeldBoard& b) { return b.area() >= needed; })) continue;
        one_piece(selection);
        join(selection);
    }
}

double Fronts::area(std::size_t selection) const {
    double sum = 0;
    for (std::size_t s = 0; s < sorts_.size(); ++s) sum += static_cast<double>(selections_.how_many(selection, s)) * sorts_[s].area();
    return sum;
}

std::size_t Fronts::sort_of_one(std::size_t selection) const {
    std::size_t s = 0;
    while (selections_.one_of(s) != selection) ++s;
    return s;
}

void Fronts::one_piece(std::size_t selection) {
    for (std::size_t s = 0; s < sorts_.size(); ++s) {
        if (selections_.one_of(s) != selection) continue;
        const Size size = sorts_[s].size;
        for (const Size lying : {size, size.turned()})
            if (lying == size || sorts_[s].turnable) {
                const Block block{lying.width, lying.height, 0, false, 0, 0, 0};
                if (fits_somewhere(block)) fronts_[selection].push_back(block);
            }
    }
}

void Fronts::join(std::size_t selection) {
    Front joined;
    selections_.parts_of(selection, [&](std::size_t part) {
        const std::size_t rest = selection - part;
        if (part < rest || rest == 0 || fronts_[part].empty() || fronts_[rest].empty()) return;
        // What is larger lies at the lower left: leftovers gather at the other side.
        const std::size_t first = area(part) >= area(rest) ? part : rest, second = selection - first;
        joined.clear();
        put_beside(fronts_[first], fronts_[second], first, joined);
        merge(fronts_[selection], joined);
        joined.clear();
        put_atop(fronts_[first], fronts_[second], first, joined);
        merge(fronts_[selection], joined);
    });
}

bool Fronts::fits_somewhere(const Block& block) const {
    return std::any_of(boards_.begin(), boards_.end(), [&](const HeldBoard& b) { return b.holds(block.size()); });
}

/// The front of both. Of equal sizes the one with fewer cuts stays, then the one that was there.
void Fronts::merge(Front& into, Front& joined) const {
    joined.erase(std::remove_if(joined.begin(), joined.end(), [&](const Block& b) { return !fits_somewhere(b); }), joined.end());
    if (joined.empty()) return;
    const auto before = [](const Block& a, const Block& b) {
        return std::tuple(a.width, a.height, a.cuts) < std::tuple(b.width, b.height, b.cuts);
    };
    Front both;
    both.reserve(into.size() + joined.size());
    for (auto a = into.begin(), b = joined.begin(); a != into.end() || b != joined.end();) {
        const bool old = b == joined.end() || (a != into.end() && !before(*b, *a));
        const Block& next = old ? *a++ : *b++;
        if (both.empty() || next.height < both.back().height) both.push_back(next);
    }
    into.swap(both);
}

std::optional<Fronts::Fit> Fronts::fit(std::size_t selection, const HeldBoard& board) const {
    std::optional<Fit> best;
    const Front& front = fronts_[selection];
    for (std::uint32_t way = 0; way < front.size(); ++way) {
        const Block& block = front[way];
        if (!board.holds(block.size())) continue;
        const double remainder = std::max(strip_beside(block, board), strip_above(block, board));
        if (!best || remainder > best->remainder) best = Fit{way, remainder};
    }
    return best;
}

Layout Fronts::laid_out(std::size_t selection, std::uint32_t way, const HeldBoard& board) const {
    Layout layout(board);
    const Block& block = fronts_[selection][way];
    const bool across_first = strip_above(block, board) > strip_beside(block, board);
    std::size_t part = layout.cut(0, across_first, across_first ? block.height : block.width);
    part = layout.cut(part, !across_first, across_first ? block.width : block.height);
    lay(layout, part, selection, way);
    return layout;
}

void Fronts::lay(Layout& layout, std::size_t part, std::size_t selection, std::uint32_t way) const {
    const Block& block = fronts_[selection][way];
    if (block.first == 0) {
        layout.parts[part].sort = sort_of_one(selection);
        return;
    }
    const Rect room = layout.parts[part].rect;
    const std::size_t second = selection - block.first;
    const Block &a = fronts_[block.first][block.first_way], &b = fronts_[second][block.second_way];
    const std::size_t lower = layout.cut(part, block.atop, block.atop ? room.bottom + a.height : room.left + a.width), upper = lower + 1;
    const auto trimmed = [&](std::size_t of, const Block& to) {
        return block.atop ? layout.cut(of, false, room.left + to.width) : layout.cut(of, true, room.bottom + to.height);
    };
    const std::size_t a_part = trimmed(lower, a);
    lay(layout, a_part, block.first, block.first_way);
    const std::size_t b_part = trimmed(upper, b);
    lay(layout, b_part, second, block.second_way);
}

}  // namespace qw::journal::cutting
