// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/lying_panels.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace qw::compose {

namespace {

const Length beside_edge = Length::mm(0.05);

Point between(Point a, Point b, double t) { return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}; }

/// Where a line crosses another, as a share of its length; nothing outside of either.
std::optional<double> crossing(Point a, Point b, const Stroke& other) {
    const double x = (b.x - a.x).in_mm(), y = (b.y - a.y).in_mm(), u = (other.to.x - other.from.x).in_mm(), v = (other.to.y - other.from.y).in_mm();
    const double turn = x * v - y * u;
    if (std::abs(turn) < 1e-9) return std::nullopt;
    const double p = (other.from.x - a.x).in_mm(), q = (other.from.y - a.y).in_mm();
    const double along = (p * v - q * u) / turn, on_other = (p * y - q * x) / turn;
    if (along <= 0 || along >= 1 || on_other < 0 || on_other > 1) return std::nullopt;
    return along;
}

}  // namespace

LyingPanels::LyingPanels(const parts::Net& net, const parts::Folded& folded, std::size_t state, bool from_behind) : net_(net), poses_(folded.states.at(state)) {
    for (parts::Pose& pose : poses_)
        if (from_behind) pose = {Matrix{-1, 0, 0, 1, 0, 0}.after(pose.place), !pose.back_up, -pose.level};
    for (std::size_t i = 0; i < net.panels.size(); ++i) placed_.push_back(parts::mapped(net.panels[i].region, poses_[i].place));
    for (std::size_t i = 0; i < net.panels.size(); ++i) {
        std::vector<parts::Region> higher;
        for (std::size_t j = 0; j < net.panels.size(); ++j)
            if (poses_[j].level > poses_[i].level) higher.push_back(placed_[j]);
        above_.push_back(parts::united(higher));
    }
    order_.resize(net.panels.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) { return poses_[a].level < poses_[b].level; });
}

Rect LyingPanels::around() const { return parts::bounds(parts::united(placed_)); }

/// What of a line is drawn is judged on its two sides, a little beside it, because paper that ends along it ends there:
/// below what lies over both sides it is not seen, and where the paper above ends with it, that edge stands for both.
LyingPanels::Piece LyingPanels::judged(std::size_t panel, Point flat, Length nx, Length ny, Kind kind) const {
    const Point sides[2] = {{flat.x + nx, flat.y + ny}, {flat.x - nx, flat.y - ny}};
    bool paper[2], covered[2];
    for (int i = 0; i < 2; ++i) {
        paper[i] = parts::holds(net_.whole, sides[i]);
        covered[i] = parts::holds(above_[panel], parts::mapped(sides[i], poses_[panel].place));
    }
    Piece piece;
    piece.seen = !(covered[0] && covered[1]);
    if (kind == Kind::cut && paper[0] && paper[1]) piece.drawn = false;
    if (kind == Kind::flat) return piece;
    const bool own[2] = {parts::holds(net_.panels[panel].region, sides[0]), parts::holds(net_.panels[panel].region, sides[1])};
    if (piece.seen && ((own[0] && covered[0]) || (own[1] && covered[1]))) piece.drawn = false;
    return piece;
}

/// Parts a line of the flat net where it goes under other panels.
void LyingPanels::split(std::size_t panel, Point from, Point to, Kind kind, std::vector<Piece>& into) const {
    const double length = length_of({from, to}).in_mm();
    if (length == 0) return;
    const Point a = parts::mapped(from, place(panel)), b = parts::mapped(to, place(panel));
    std::vector<double> ends{0, 1};
    for (const Stroke& edge : edges_of(above_[panel]))
        if (const auto at = crossing(a, b, edge)) ends.push_back(*at);
    std::sort(ends.begin(), ends.end());
    const Length nx = beside_edge * (-(to.y - from.y).in_mm() / length), ny = beside_edge * ((to.x - from.x).in_mm() / length);
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        if (ends[i + 1] - ends[i] < 1e-6) continue;
        Piece piece = judged(panel, between(from, to, (ends[i] + ends[i + 1]) / 2), nx, ny, kind);
        piece.from = between(a, b, ends[i]);
        piece.to = between(a, b, ends[i + 1]);
        into.push_back(piece);
    }
}

std::vector<LyingPanels::Run> LyingPanels::runs(const std::vector<Piece>& pieces) {
    std::vector<Run> all;
    bool goes_on = false;
    for (const Piece& piece : pieces) {
        if (!piece.drawn) {
            goes_on = false;
            continue;
        }
        if (!goes_on || all.back().seen != piece.seen || all.back().points.back() != piece.from) all.push_back({{piece.from}, piece.seen});
        all.back().points.push_back(piece.to);
        goes_on = true;
    }
    return all;
}

std::vector<LyingPanels::Run> LyingPanels::cut_edges(std::size_t panel) const {
    std::vector<Piece> pieces;
    for (const Stroke& edge : edges_of(net_.panels[panel].region)) split(panel, edge.from, edge.to, Kind::cut, pieces);
    return runs(pieces);
}

std::vector<LyingPanels::Run> LyingPanels::score_on(std::size_t panel, Point from, Point to, bool folded) const {
    std::vector<Piece> pieces;
    split(panel, from, to, folded ? Kind::folded : Kind::flat, pieces);
    return runs(pieces);
}

}  // namespace qw::compose
