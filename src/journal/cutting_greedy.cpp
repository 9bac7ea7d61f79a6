// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_greedy.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>

namespace qw::journal::cutting {

namespace {

/// One way to be greedy.
struct Manner {
    enum class Order { area, longer_side, height, width } order = Order::area;
    bool by_area = false;            ///< the free part that leaves least area; else least beside the piece on its tighter side
    bool keep_long = false;          ///< cut so that the larger free part gets larger; else the cut is the shorter one
};

std::vector<Manner> all_manners() {
    std::vector<Manner> all;
    for (const auto order : {Manner::Order::area, Manner::Order::longer_side, Manner::Order::height, Manner::Order::width})
        for (const bool by_area : {false, true})
            for (const bool keep_long : {false, true}) all.push_back({order, by_area, keep_long});
    return all;
}

/// Sorts in the order in which they are tried.
std::vector<std::size_t> ordered(const std::vector<Sort>& sorts, Manner::Order order) {
    std::vector<std::size_t> all(sorts.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    const auto size = [&](std::size_t s) -> double {
        const Size of = sorts[s].size;
        switch (order) {
            case Manner::Order::longer_side: return static_cast<double>(max(of.width, of.height).in_units());
            case Manner::Order::height: return static_cast<double>(of.height.in_units());
            case Manner::Order::width: return static_cast<double>(of.width.in_units());
            default: return sorts[s].area();
        }
    };
    std::stable_sort(all.begin(), all.end(), [&](std::size_t a, std::size_t b) { return size(a) > size(b); });
    return all;
}

struct Filled {
    Layout layout;
    std::vector<std::size_t> taken;  ///< of each sort
    double covered = 0;
};

/// Fills one board with what is left of the pieces.
class BoardFilling {
public:
    BoardFilling(const std::vector<Sort>& sorts, const HeldBoard& board, const Manner& manner)
        : sorts_(sorts), manner_(manner), made_{Layout(board), std::vector<std::size_t>(sorts.size()), 0}, free_{0} {}

    Filled fill(const std::vector<std::size_t>& left) {
        for (const std::size_t sort : ordered(sorts_, manner_.order))
            while (made_.taken[sort] < left[sort] && place(sort)) ++made_.taken[sort], made_.covered += sorts_[sort].area();
        return std::move(made_);
    }

private:
    struct Place {
        std::size_t at = 0;          ///< index into free_
        Size size;
        double score = std::numeric_limits<double>::max();
    };

    bool place(std::size_t sort) {
        Place best;
        for (std::size_t i = 0; i < free_.size(); ++i)
            for (const bool turned : {false, true})
                if (!turned || sorts_[sort].turnable) weigh(i, turned ? sorts_[sort].size.turned() : sorts_[sort].size, best);
        if (best.score == std::numeric_limits<double>::max()) return false;
        put(best, sort);
        return true;
    }

    void weigh(std::size_t at, Size size, Place& best) const {
        const Rect& room = made_.layout.parts[free_[at]].rect;
        const Length beside = room.width() - size.width, above = room.height() - size.height;
        if (beside < Length() || above < Length()) return;
        const double score = manner_.by_area ? area_of(room.size()) - area_of(size)
                                             : static_cast<double>(min(beside, above).in_units());
        if (score < best.score) best = {at, size, score};
    }

    void put(const Place& place, std::size_t sort) {
        Layout& layout = made_.layout;
        const std::size_t part = free_[place.at];
        free_.erase(free_.begin() + static_cast<std::ptrdiff_t>(place.at));
        const Rect room = layout.parts[part].rect;
        const Length beside = room.width() - place.size.width, above = room.height() - place.size.height;
        const bool across_first = manner_.keep_long ? area_of({room.width(), above}) > area_of({beside, room.height()}) : beside < above;
        const std::size_t strip = halve(part, across_first, place.size, room);
        layout.parts[halve(strip, !across_first, place.size, room)].sort = sort;
    }

    /// Cuts the piece's side off; what lies behind the cut is free.
    std::size_t halve(std::size_t part, bool across, Size size, const Rect& room) {
        const std::size_t piece = made_.layout.cut(part, across, across ? room.bottom + size.height : room.left + size.width);
        if (piece != part) free_.push_back(piece + 1);
        return piece;
    }

    const std::vector<Sort>& sorts_;
    Manner manner_;
    Filled made_;
    std::vector<std::size_t> free_;
};

/// A whole plan in one manner.
struct Greedy {
    std::vector<Layout> layouts;
    double covered = 0, area = 0;
    bool better_than(const Greedy& other) const {
        if (covered != other.covered) return covered > other.covered;
        return std::tuple(layouts.size(), area) < std::tuple(other.layouts.size(), other.area);
    }
};

std::vector<std::size_t> numbers_of(const std::vector<Sort>& sorts) {
    std::vector<std::size_t> left;
    for (const Sort& sort : sorts) left.push_back(sort.pieces.size());
    return left;
}

Greedy plan_in(const Manner& manner, const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply) {
    Greedy plan;
    std::vector<std::size_t> left = numbers_of(sorts);
    std::vector<int> used(supply.size());
    for (;;) {
        std::optional<Filled> best;
        for (const HeldBoard& board : boards) {
            if (supply[board.board].most && used[board.board] >= *supply[board.board].most) continue;
            Filled filled = BoardFilling(sorts, board, manner).fill(left);
            const bool better = !best || filled.covered > best->covered ||
                                (filled.covered == best->covered && board.area() < best->layout.board.area());
            if (filled.covered > 0 && better) best = std::move(filled);
        }
        if (!best) return plan;
        for (std::size_t s = 0; s < left.size(); ++s) left[s] -= best->taken[s];
        ++used[best->layout.board.board];
        plan.covered += best->covered;
        plan.area += best->layout.board.area();
        plan.layouts.push_back(std::move(best->layout));
    }
}

/// Whether two pieces go on one board: beside or on each other, each as it may lie.
bool share_a_board(const Sort& a, const Sort& b, const std::vector<HeldBoard>& boards) {
    for (const Size x : {a.size, a.turnable ? a.size.turned() : a.size})
        for (const Size y : {b.size, b.turnable ? b.size.turned() : b.size})
            for (const HeldBoard& board : boards)
                if (board.holds({x.width + y.width, max(x.height, y.height)}) || board.holds({max(x.width, y.width), x.height + y.height})) return true;
    return false;
}

std::size_t by_area(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply) {
    double needed = 0;
    for (const Sort& sort : sorts) needed += sort.area() * static_cast<double>(sort.pieces.size());
    needed *= 1 - 1e-9;  // sums of many areas may be off in the last digits: never ask for a board too many
    std::vector<HeldBoard> largest;
    for (const HeldBoard& board : boards)
        if (std::none_of(largest.begin(), largest.end(), [&](const HeldBoard& b) { return b.board == board.board; })) largest.push_back(board);
    std::stable_sort(largest.begin(), largest.end(), [](const HeldBoard& a, const HeldBoard& b) { return a.area() > b.area(); });
    std::size_t fewest = 0;
    for (const HeldBoard& board : largest)
        for (int n = 0; needed > 0 && (!supply[board.board].most || n < *supply[board.board].most); ++n) needed -= board.area(), ++fewest;
    return fewest;
}

/// Gathers pieces, large ones first, of which no two share a board.
std::size_t by_pairs(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards) {
    std::vector<const Sort*> apart;
    std::size_t fewest = 0;
    for (const Sort& sort : sorts) {
        if (std::any_of(apart.begin(), apart.end(), [&](const Sort* other) { return share_a_board(sort, *other, boards); })) continue;
        apart.push_back(&sort);
        fewest += share_a_board(sort, sort, boards) ? 1 : sort.pieces.size();
    }
    return fewest;
}

}  // namespace

std::vector<Layout> greedy_layouts(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply) {
    Greedy best;
    for (const Manner& manner : all_manners()) {
        Greedy plan = plan_in(manner, sorts, boards, supply);
        if (plan.better_than(best)) best = std::move(plan);
    }
    return std::move(best.layouts);
}

std::size_t fewest_thinkable(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply) {
    return std::max(by_area(sorts, boards, supply), by_pairs(sorts, boards));
}

}  // namespace qw::journal::cutting
