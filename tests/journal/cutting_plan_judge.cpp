// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_plan_judge.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace qw::test {

using journal::CutBoard;
using journal::CutPiece;
using journal::CuttingPlan;

namespace {

bool has_grain(const CutPiece& piece) { return piece.grain == "height" || piece.grain == "width"; }

bool disjoint(const Rect& a, const Rect& b) { return a.shared_with(b).empty(); }

/// Straight cuts can part the rectangles one from another: found by cutting along one of their sides and looking again.
bool can_be_cut_apart(const std::vector<Rect>& rects) {
    if (rects.size() < 2) return true;
    for (const bool across : {false, true})
        for (const Rect& by : rects) {
            const Length line = across ? by.top : by.right;
            std::vector<Rect> low, high;
            bool through = false;
            for (const Rect& r : rects) {
                if ((across ? r.top : r.right) <= line) low.push_back(r);
                else if ((across ? r.bottom : r.left) >= line) high.push_back(r);
                else through = true;
            }
            if (!through && !high.empty() && can_be_cut_apart(low) && can_be_cut_apart(high)) return true;
        }
    return false;
}

/// Carries the cuts out one after the other; the parts that are there in the end.
std::optional<std::vector<Rect>> parts_after(const CutBoard& board, Size size) {
    std::vector<Rect> parts{Rect::of(size)};
    for (const auto& cut : board.cuts) {
        const auto part = std::find(parts.begin(), parts.end(), cut.of);
        if (part == parts.end()) return std::nullopt;
        Rect low = cut.of, high = cut.of;
        (cut.across ? low.top : low.right) = cut.at;
        (cut.across ? high.bottom : high.left) = cut.at;
        if (low.empty() || high.empty()) return std::nullopt;
        *part = low;
        parts.push_back(high);
    }
    return parts;
}

bool less(const Rect& a, const Rect& b) {
    return std::tuple(a.left, a.bottom, a.right, a.top) < std::tuple(b.left, b.bottom, b.right, b.top);
}

std::string wrong_grain(const CutBoard& board, const kit::Board& of, const std::vector<CutPiece>& pieces) {
    if (board.grain != "any" && of.grain != "unknown" && board.grain != of.grain) return "the board's grain is another";
    for (const auto& placed : board.pieces) {
        const CutPiece& piece = pieces[placed.piece];
        if (!has_grain(piece)) continue;
        // Where the grain of the piece runs, now that it lies on the board.
        const std::string lies = placed.turned ? (piece.grain == "height" ? "width" : "height") : piece.grain;
        if (lies != board.grain) return "a piece lies against the grain";
    }
    return "";
}

std::string wrong_on(const CutBoard& board, const kit::Board& of, const std::vector<CutPiece>& pieces) {
    std::vector<Rect> rects;
    double covered = 0;
    for (const auto& placed : board.pieces) {
        const Size size = pieces[placed.piece].size;
        if (placed.at.size() != (placed.turned ? size.turned() : size)) return "a piece has another size";
        if (!Rect::of(of.size).holds(placed.at)) return "a piece lies beyond the board";
        for (const Rect& other : rects)
            if (!disjoint(placed.at, other)) return "two pieces overlap";
        rects.push_back(placed.at);
        covered += placed.at.width().in_mm() * placed.at.height().in_mm();
    }
    if (rects.empty()) return "a board without a piece";
    if (!can_be_cut_apart(rects)) return "no straight cuts part these pieces";
    if (std::abs(board.used - covered / (of.size.width.in_mm() * of.size.height.in_mm())) > 1e-9) return "the used share is another";
    auto parts = parts_after(board, of.size);
    if (!parts) return "a cut does not go through one part";
    rects.insert(rects.end(), board.left_over.begin(), board.left_over.end());
    std::sort(rects.begin(), rects.end(), less);
    std::sort(parts->begin(), parts->end(), less);
    if (*parts != rects) return "the cuts leave other parts than pieces and leftovers";
    return wrong_grain(board, of, pieces);
}

}  // namespace

std::string what_is_wrong(const CuttingPlan& plan, const std::vector<CutPiece>& pieces, const std::vector<journal::BoardSupply>& supply) {
    std::vector<int> counted(pieces.size()), taken(supply.size());
    for (const CutBoard& board : plan.boards) {
        if (const std::string wrong = wrong_on(board, supply[board.board].board, pieces); !wrong.empty()) return wrong;
        ++taken[board.board];
        for (const auto& placed : board.pieces) ++counted[placed.piece];
    }
    for (const auto& left : plan.not_cut) counted[left.piece] += left.count;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        if (counted[i] != pieces[i].count) return "not every piece is told of once";
    for (std::size_t i = 0; i < supply.size(); ++i)
        if (supply[i].most && taken[i] > *supply[i].most) return "more boards than there are";
    return "";
}

namespace {

/// Everything in whole millimetres, every piece by itself.
class Trying {
public:
    Trying(const std::vector<CutPiece>& pieces, const std::vector<journal::BoardSupply>& supply) : supply_(supply) {
        for (const CutPiece& piece : pieces)
            for (int n = 0; n < piece.count; ++n) pieces_.push_back(piece);
    }

    std::optional<Merit> best() {
        share_out(0, {});
        return best_;
    }

private:
    using Group = unsigned;  ///< a bit for each piece

    static int mm(Length length) { return static_cast<int>(std::lround(length.in_mm())); }

    /// Puts piece after piece into one of the groups or begins a new one.
    void share_out(std::size_t piece, std::vector<Group> groups) {
        if (piece == pieces_.size()) return choose_boards(groups, 0, std::vector<int>(supply_.size()), {});
        for (std::size_t g = 0; g < groups.size(); ++g) {
            auto with = groups;
            with[g] |= 1u << piece;
            share_out(piece + 1, with);
        }
        groups.push_back(1u << piece);
        share_out(piece + 1, groups);
    }

    void choose_boards(const std::vector<Group>& groups, std::size_t at, const std::vector<int>& taken, const Merit& so_far) {
        if (at == groups.size()) {
            const auto order = [](const Merit& m) { return std::tuple(m.boards, m.area, -m.remainder); };
            if (!best_ || order(so_far) < order(*best_)) best_ = so_far;
            return;
        }
        for (std::size_t b = 0; b < supply_.size(); ++b) {
            if (supply_[b].most && taken[b] >= *supply_[b].most) continue;
            const auto left = remainder(groups[at], b);
            if (!left) continue;
            auto more = taken;
            ++more[b];
            const kit::Board& board = supply_[b].board;
            choose_boards(groups, at + 1, more,
                          {so_far.boards + 1, so_far.area + static_cast<long>(mm(board.size.width)) * mm(board.size.height),
                           std::max(so_far.remainder, *left)});
        }
    }

    /// The largest part that one cut takes off a board with these pieces; nothing when they do not fit.
    std::optional<long> remainder(Group group, std::size_t b) {
        const auto known = remainders_.find({group, b});
        if (known != remainders_.end()) return known->second;
        const kit::Board& board = supply_[b].board;
        const int w = mm(board.size.width), h = mm(board.size.height);
        std::optional<long> most;
        for (const bool grain_up : {true, false}) {
            if (board.grain == (grain_up ? "width" : "height") || !fit(group, w, h, grain_up)) continue;
            for (int x = 1; x <= w; ++x)
                if (fit(group, x, h, grain_up)) most = std::max(most.value_or(0), static_cast<long>(w - x) * h);
            for (int y = 1; y <= h; ++y)
                if (fit(group, w, y, grain_up)) most = std::max(most.value_or(0), static_cast<long>(h - y) * w);
        }
        return remainders_[{group, b}] = most;
    }

    bool lies_in(const CutPiece& piece, int w, int h, bool grain_up) const {
        const bool upright = mm(piece.size.width) <= w && mm(piece.size.height) <= h;
        const bool on_its_side = mm(piece.size.height) <= w && mm(piece.size.width) <= h;
        if (!has_grain(piece)) return upright || on_its_side;
        return (piece.grain == "height") == grain_up ? upright : on_its_side;
    }

    /// The pieces come out of a part of w × h: one that fits, or every cut at every millimetre, and every way to share
    /// the pieces out to its two sides.
    bool fit(Group group, int w, int h, bool grain_up) {
        int area = 0;
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            if (group >> i & 1u) {
                area += mm(pieces_[i].size.width) * mm(pieces_[i].size.height);
                if (!lies_in(pieces_[i], w, h, grain_up)) return false;
            }
        if (area > w * h) return false;
        if ((group & (group - 1)) == 0) return true;
        const std::array<unsigned, 4> key{group, static_cast<unsigned>(w), static_cast<unsigned>(h), grain_up};
        const auto known = fits_.find(key);
        if (known != fits_.end()) return known->second;
        return fits_[key] = can_be_halved(group, w, h, grain_up);
    }

    bool can_be_halved(Group group, int w, int h, bool grain_up) {
        for (Group part = (group - 1) & group; part != 0; part = (part - 1) & group) {
            for (int x = 1; x < w; ++x)
                if (fit(part, x, h, grain_up) && fit(group & ~part, w - x, h, grain_up)) return true;
            for (int y = 1; y < h; ++y)
                if (fit(part, w, y, grain_up) && fit(group & ~part, w, h - y, grain_up)) return true;
        }
        return false;
    }

    const std::vector<journal::BoardSupply>& supply_;
    std::vector<CutPiece> pieces_;
    std::optional<Merit> best_;
    std::map<std::array<unsigned, 4>, bool> fits_;
    std::map<std::pair<Group, std::size_t>, std::optional<long>> remainders_;
};

}  // namespace

std::optional<Merit> best_by_trying(const std::vector<CutPiece>& pieces, const std::vector<journal::BoardSupply>& supply) {
    return Trying(pieces, supply).best();
}

Merit merit_of(const CuttingPlan& plan, const std::vector<journal::BoardSupply>& supply) {
    Merit merit;
    const auto mm2 = [](Length w, Length h) { return std::lround(w.in_mm() * h.in_mm()); };
    for (const CutBoard& board : plan.boards) {
        const Size size = supply[board.board].board.size;
        ++merit.boards;
        merit.area += mm2(size.width, size.height);
        // What one cut takes off: the strips beside all pieces and above all of them, or the same from the other sides.
        Rect all = board.pieces.front().at;
        for (const auto& p : board.pieces) all = {min(all.left, p.at.left), min(all.bottom, p.at.bottom), max(all.right, p.at.right), max(all.top, p.at.top)};
        merit.remainder = std::max({merit.remainder, mm2(size.width - all.right, size.height), mm2(size.width, size.height - all.top)});
    }
    return merit;
}

}  // namespace qw::test
