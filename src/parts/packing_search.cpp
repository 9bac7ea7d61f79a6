// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_search.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <iterator>
#include <tuple>
#include <unordered_set>

namespace qw::parts::packing {

namespace {

bool earlier(const Copy& a, const Copy& b) {
    return std::tie(a.turn, a.at.y, a.at.x) < std::tie(b.turn, b.at.y, b.at.x);
}

Point plus(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
Point minus(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }

/// Copies that lie there, and where one more can be put.
struct Field {
    Copies placed;
    Copies free;                       ///< sorted by `earlier`
};

NoFit::Edge edge_at(const NoFit::Edge& edge, Point by) {
    return {plus(edge.a, by), plus(edge.b, by), edge.box.moved(by.x, by.y), edge.length, edge.straight};
}

bool meet(const Rect& a, const Rect& b) {
    return a.left <= b.right && b.left <= a.right && a.bottom <= b.top && b.bottom <= a.top;
}

/// Where two edges that are not parallel meet, to the unit.
void add_meeting(const NoFit::Edge& e, const NoFit::Edge& f, std::vector<Point>& points) {
    if (!meet(e.box, f.box)) return;
    const double ex = static_cast<double>((e.b.x - e.a.x).in_units()), ey = static_cast<double>((e.b.y - e.a.y).in_units());
    const double fx = static_cast<double>((f.b.x - f.a.x).in_units()), fy = static_cast<double>((f.b.y - f.a.y).in_units());
    const double turn = ex * fy - ey * fx;
    if (turn == 0) return;
    const double wx = static_cast<double>((f.a.x - e.a.x).in_units()), wy = static_cast<double>((f.a.y - e.a.y).in_units());
    const double along_e = (wx * fy - wy * fx) / turn, along_f = (wx * ey - wy * ex) / turn;
    if (along_e * e.length < -1 || (along_e - 1) * e.length > 1 || along_f * f.length < -1 || (along_f - 1) * f.length > 1) return;
    Point point{e.a.x + Length::units(std::llround(ex * along_e)), e.a.y + Length::units(std::llround(ey * along_e))};
    for (const NoFit::Edge* edge : {&e, &f}) {  // what an edge along an axis says of the point is exact
        if (edge->a.x == edge->b.x) point.x = edge->a.x;
        if (edge->a.y == edge->b.y) point.y = edge->a.y;
    }
    points.push_back(point);
}

class Search {
public:
    Search(const Task& task, Budget budget) : task_(task), budget_(budget) {
        for (const int turn : task.turns) {
            const Length right = task.area.width - task.size[turn].width, top = task.area.height - task.size[turn].height;
            places_[turn] = {{}, {}, right, top};
            walls_[turn] = NoFit({{{}, {right, {}}, {right, top}, {{}, top}}});
        }
    }

    Copies run(const Copies& known);

private:
    using Order = std::function<std::tuple<Length, Length>(const Copy&)>;
    static std::vector<Order> orders(const Task& task);
    Field empty() const;
    Copies along_walls();
    Field with(const Field& field, const Copy& copy);
    void add_free(Field& field, int turn);
    bool free_for(const Copies& placed, const Copy& copy);
    void put_in_order(Copies& copies, const Order& order) const;
    void greedy(const Order& order, const std::vector<int>& turns);
    void wander(const Order& order);
    void branch(const Field& field, const Order& order, Budget& share);
    void keep(const Copies& copies) { if (copies.size() > best_.size()) best_ = copies; }
    bool done() const { return best_.size() >= task_.target || budget_.spent(); }
    bool seen(Copies copies);

    const Task& task_;
    Budget budget_;
    std::array<Rect, 4> places_;
    std::array<NoFit, 4> walls_;
    Copies best_;
    std::unordered_set<std::uint64_t> seen_;
    std::uint32_t state_ = 1;
};

std::vector<Search::Order> Search::orders(const Task& task) {
    const auto top = [&task](const Copy& copy) { return copy.at.y + task.size[copy.turn].height; };
    const auto right = [&task](const Copy& copy) { return copy.at.x + task.size[copy.turn].width; };
    return {
        [](const Copy& copy) { return std::tuple(copy.at.y, copy.at.x); },
        [](const Copy& copy) { return std::tuple(copy.at.x, copy.at.y); },
        [top](const Copy& copy) { return std::tuple(top(copy), copy.at.x); },
        [right](const Copy& copy) { return std::tuple(right(copy), copy.at.y); },
        [top, right](const Copy& copy) { return std::tuple(top(copy) + right(copy), copy.at.x); },
    };
}

Field Search::empty() const {
    Field field;
    for (const int turn : task_.turns) {
        const Rect& place = places_[turn];
        for (const Length y : {place.bottom, place.top})
            for (const Length x : {place.left, place.right}) field.free.push_back({turn, {x, y}});
    }
    std::sort(field.free.begin(), field.free.end(), earlier);
    field.free.erase(std::unique(field.free.begin(), field.free.end()), field.free.end());
    return field;
}

/// Places at a wall that a copy has when another one, at the wall next to it, holds it off. Four copies can lie in a ring,
/// each held off by the next, and none in a corner.
Copies Search::along_walls() {
    Copies places;
    for (const int turn : task_.turns)
        for (const int other : task_.turns)
            for (const NoFit::Edge& edge : task_.no_fit[other][turn].edges()) {
                const Rect &own = places_[turn], &its = places_[other];
                for (const Length y : {edge.a.y, its.top + edge.a.y})
                    for (const Length x : {own.left, own.right}) places.push_back({turn, {x, y}});
                for (const Length x : {edge.a.x, its.right + edge.a.x})
                    for (const Length y : {own.bottom, own.top}) places.push_back({turn, {x, y}});
            }
    std::sort(places.begin(), places.end(), earlier);
    places.erase(std::unique(places.begin(), places.end()), places.end());
    std::erase_if(places, [this](const Copy& place) { return !free_for({}, place); });
    return places;
}

bool Search::free_for(const Copies& placed, const Copy& copy) {
    const Rect here{copy.at.x, copy.at.y, copy.at.x, copy.at.y};
    if (!places_[copy.turn].holds(here)) return false;
    for (const Copy& other : placed) {
        const NoFit& no_fit = task_.no_fit[other.turn][copy.turn];
        --budget_.steps;
        if (!no_fit.box().moved(other.at.x, other.at.y).holds(here)) continue;
        budget_.steps -= static_cast<std::int64_t>(no_fit.edges().size());
        if (no_fit.blocks(minus(copy.at, other.at))) return false;
    }
    return true;
}

/// New places lie on the edges of what the last copy blocks: at its corners, and where they meet others.
void Search::add_free(Field& field, int turn) {
    const Copy& last = field.placed.back();
    const NoFit& blocked = task_.no_fit[last.turn][turn];
    const Rect box = blocked.box().moved(last.at.x, last.at.y);
    std::vector<Point> points;
    for (const NoFit::Edge& edge : blocked.edges()) {
        const NoFit::Edge here = edge_at(edge, last.at);
        if (!meet(here.box, places_[turn])) continue;
        points.push_back(here.a);
        for (const NoFit::Edge& wall : walls_[turn].edges()) add_meeting(here, wall, points);
        for (const Copy& other : field.placed) {
            const NoFit& beside = task_.no_fit[other.turn][turn];
            if (&other == &last || !meet(beside.box().moved(other.at.x, other.at.y), box)) continue;
            if (!meet(beside.box().moved(other.at.x, other.at.y), here.box)) continue;
            budget_.steps -= static_cast<std::int64_t>(beside.edges().size());
            for (const NoFit::Edge& its : beside.edges()) add_meeting(here, edge_at(its, other.at), points);
        }
    }
    std::sort(points.begin(), points.end(), [](Point a, Point b) { return std::tie(a.y, a.x) < std::tie(b.y, b.x); });
    points.erase(std::unique(points.begin(), points.end()), points.end());
    for (const Point point : points)
        if (free_for(field.placed, {turn, point})) field.free.push_back({turn, point});
}

Field Search::with(const Field& field, const Copy& copy) {
    Field next;
    next.placed = field.placed;
    next.placed.push_back(copy);
    const Copies last{copy};
    for (const Copy& place : field.free)
        if (free_for(last, place)) next.free.push_back(place);
    for (const int turn : task_.turns) add_free(next, turn);
    budget_.steps -= static_cast<std::int64_t>(100 + 20 * next.free.size() + 4 * next.placed.size());
    std::sort(next.free.begin(), next.free.end(), earlier);
    next.free.erase(std::unique(next.free.begin(), next.free.end()), next.free.end());
    return next;
}

void Search::put_in_order(Copies& copies, const Order& order) const {
    std::stable_sort(copies.begin(), copies.end(), [&](const Copy& a, const Copy& b) { return order(a) < order(b); });
}

void Search::greedy(const Order& order, const std::vector<int>& turns) {
    Field field = empty();
    while (!done()) {
        const Copy* first = nullptr;
        for (const Copy& place : field.free) {
            if (std::find(turns.begin(), turns.end(), place.turn) == turns.end()) continue;
            if (!first || order(place) < order(*first)) first = &place;
        }
        if (!first) break;
        field = with(field, Copy(*first));
        keep(field.placed);
    }
    while (!done() && !field.free.empty()) {
        put_in_order(field.free, order);
        field = with(field, Copy(field.free.front()));
        keep(field.placed);
    }
}

/// As `greedy`, but now and then the second, third … place is taken, by numbers that are the same every time.
void Search::wander(const Order& order) {
    Field field = empty();
    while (!done() && !field.free.empty()) {  // three times of four the first place
        std::size_t skip = 0;
        for (; skip < field.free.size() - 1; ++skip) {
            state_ = state_ * 1664525U + 1013904223U;
            if (state_ >> 30 != 0) break;
        }
        put_in_order(field.free, order);
        field = with(field, Copy(field.free[skip]));
    }
    keep(field.placed);
}

bool Search::seen(Copies copies) {
    std::sort(copies.begin(), copies.end(), earlier);
    std::uint64_t hash = 14695981039346656037ULL;
    const auto mix = [&hash](std::int64_t value) {
        hash ^= static_cast<std::uint64_t>(value);
        hash *= 1099511628211ULL;
        hash ^= hash >> 29;
    };
    for (const Copy& copy : copies) {
        mix(copy.turn);
        mix(copy.at.x.in_units());
        mix(copy.at.y.in_units());
    }
    return !seen_.insert(hash).second;
}

void Search::branch(const Field& field, const Order& order, Budget& share) {
    Copies places = field.free;
    put_in_order(places, order);
    for (const Copy& place : places) {
        if (done() || share.spent()) return;
        Copies placed = field.placed;
        placed.push_back(place);
        if (seen(placed)) continue;
        const std::int64_t before = budget_.steps;
        const Field next = with(field, place);
        share.steps -= before - budget_.steps;
        keep(next.placed);
        branch(next, order, share);
    }
}

Copies Search::run(const Copies& known) {
    best_ = known;
    const auto all = orders(task_);
    std::vector<std::vector<int>> choices{task_.turns};
    for (const int turn : {0, 1}) {
        std::vector<int> half_turns;
        std::copy_if(task_.turns.begin(), task_.turns.end(), std::back_inserter(half_turns), [&](int t) { return t % 2 == turn; });
        if (half_turns.size() == 2) choices.push_back(half_turns);
    }
    for (const int turn : task_.turns)
        if (choices.size() < 5) choices.push_back({turn});
    for (const auto& turns : choices)
        for (const Order& order : all) {
            if (done()) return best_;
            greedy(order, turns);
        }
    for (std::size_t i = 0; i < all.size(); ++i) {  // the first one has a chance to see everything that there is
        Budget share{budget_.steps / (i == 0 ? 2 : 10)};
        seen_.clear();
        branch(empty(), all[i], share);
        for (const Copy& first : along_walls())
            if (!done() && !share.spent() && !seen({first})) branch(with(empty(), first), all[i], share);
        if (done() || !share.spent()) return best_;  // nothing is left to try
    }
    while (!done())
        for (const Order& order : all) wander(order);
    return best_;
}

}  // namespace

Copies searched(const Task& task, const Copies& known, Budget budget) { return Search(task, budget).run(known); }

}  // namespace qw::parts::packing
