// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/assemble.h"

#include "parts/arcs.h"
#include "parts/edges.h"
#include "parts/outline.h"
#include "parts/plane.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <numeric>

namespace qw::parts {

namespace {

std::string square_mm(double area) {
    char text[48];
    std::snprintf(text, sizeof text, "%.1f square mm", area);
    return text;
}

void find_overlaps(const std::vector<Panel>& panels, std::vector<PanelsFault>& faults) {
    for (std::size_t i = 0; i < panels.size(); ++i)
        for (std::size_t j = i + 1; j < panels.size(); ++j) {
            const Region both = shared(panels[i].region, panels[j].region);
            if (!is_area(both)) continue;
            faults.push_back({"panels-overlap", {j, i}, "panel '" + panels[j].name + "' overlaps '" + panels[i].name + "' by " + square_mm(area_mm2(both)),
                              "panels side by side in the flat net", "look at the coordinates of their common edge"});
        }
}

std::size_t root_of(std::vector<std::size_t>& parent, std::size_t i) {
    while (parent[i] != i) i = parent[i] = parent[parent[i]];
    return i;
}

void find_pieces(const std::vector<Panel>& panels, std::vector<PanelsFault>& faults) {
    std::vector<std::size_t> parent(panels.size());
    std::iota(parent.begin(), parent.end(), std::size_t{0});
    for (const SharedEdge& edge : shared_edges(panels))
        if (distance(edge.from, edge.to) >= least_width.in_mm()) parent[root_of(parent, edge.b)] = root_of(parent, edge.a);
    for (std::size_t i = 1; i < panels.size(); ++i) {
        if (root_of(parent, i) == root_of(parent, 0)) continue;
        faults.push_back({"net-in-pieces", {i, 0}, "panel '" + panels[i].name + "' shares no edge with the panels that hold together with '" + panels[0].name + "'",
                          "a net in one piece", "give it an edge whose ends lie on an edge of its neighbour"});
        parent[root_of(parent, i)] = root_of(parent, 0);
    }
}

/// Direction of an edge where it leaves its beginning, or, for the reverse, its end.
double heading(Point from, const Outline::Edge& edge, bool backwards) {
    Ring ring{from};
    add_chords(ring, from, edge);
    const Vec v = backwards ? Vec::of(ring[ring.size() - 2]) - Vec::of(ring.back()) : Vec::of(ring[1]) - Vec::of(ring[0]);
    return std::atan2(v.y, v.x);
}

/// Of the free pieces that leave the end of `piece`, the one that goes on round the same panels: the first that one meets
/// on turning clockwise from the way back. Where panels touch in a point only, each keeps its own way.
std::size_t next_of(const EdgePiece& piece, const std::vector<EdgePiece>& free, const std::vector<bool>& used, std::size_t first) {
    std::size_t best = free.size();
    double least = 0;
    const double back = heading(piece.from, piece.edge, true);
    for (std::size_t i = 0; i < free.size(); ++i) {
        if ((used[i] && i != first) || free[i].from != piece.edge.to) continue;
        double turn = back - heading(free[i].from, free[i].edge, false);
        while (turn <= 1e-9) turn += 2 * std::numbers::pi;
        if (best == free.size() || turn < least) best = i, least = turn;
    }
    return best;
}

bool goes_straight_on(Point before, Point corner, Point after) {
    const Vec u = Vec::of(corner) - Vec::of(before), v = Vec::of(after) - Vec::of(corner);
    return dot(u, v) > 0 && std::abs(beside(Vec::of(corner), Vec::of(before), unit(Vec::of(after) - Vec::of(before)))) < same_point.in_mm();
}

/// Whether an edge goes on as the edge before it, straight or round the same centre.
bool goes_on(Point before, const Outline::Edge& first, const Outline::Edge& second) {
    if (first.centre.has_value() != second.centre.has_value()) return false;
    if (!first.centre) return goes_straight_on(before, first.to, second.to);
    return first.clockwise == second.clockwise && distance(*first.centre, *second.centre) < same_point.in_mm() &&
           sweep_of(before, first) + sweep_of(first.to, second) < 2 * std::numbers::pi - 0.01;
}

Outline joined_up(const Outline& outline) {
    Outline joined = outline;
    joined.edges.clear();
    Point before = outline.start;      // where the last edge of `joined` begins
    Point at = outline.start;
    for (const Outline::Edge& edge : outline.edges) {
        if (!joined.edges.empty() && goes_on(before, joined.edges.back(), edge)) {
            joined.edges.back().to = edge.to;
        } else {
            before = at;
            joined.edges.push_back(edge);
        }
        at = edge.to;
    }
    // The last edge may go on as the first one does: begin where that one ends.
    if (joined.edges.size() > 2 && goes_on(before, joined.edges.back(), joined.edges.front())) {
        joined.start = joined.edges.front().to;
        joined.edges.back().to = joined.start;
        joined.edges.erase(joined.edges.begin());
    }
    return joined;
}

std::vector<Outline> loops_of(const std::vector<EdgePiece>& free) {
    std::vector<bool> used(free.size());
    std::vector<Outline> loops;
    for (std::size_t first = 0; first < free.size(); ++first) {
        if (used[first]) continue;
        Outline loop;
        loop.start = free[first].from;
        std::size_t i = first;
        do {
            used[i] = true;
            loop.edges.push_back(free[i].edge);
            i = next_of(free[i], free, used, first);
        } while (i != first && i != free.size());
        if (loop.edges.back().to == loop.start) loops.push_back(joined_up(loop));
    }
    return loops;
}

}  // namespace

std::vector<PanelsFault> faults_of(const std::vector<Panel>& panels) {
    std::vector<PanelsFault> faults;
    find_overlaps(panels, faults);
    find_pieces(panels, faults);
    return faults;
}

Assembled assembled(const std::vector<Panel>& panels) {
    std::vector<EdgePiece> free;
    for (const EdgePiece& piece : pieces_of(panels))
        if (!piece.beyond) free.push_back(piece);
    Assembled made;
    made.cut = loops_of(free);
    std::stable_sort(made.cut.begin(), made.cut.end(), [](const Outline& a, const Outline& b) { return area_mm2(a.region()) > area_mm2(b.region()); });
    for (const Outline& outline : made.cut) {
        const Region ring = outline.region();
        made.whole.insert(made.whole.end(), ring.begin(), ring.end());
    }
    return made;
}

Rect frame_of(const std::vector<Panel>& panels, const std::vector<std::size_t>& indices) {
    Region together;
    for (const std::size_t i : indices) together.insert(together.end(), panels[i].region.begin(), panels[i].region.end());
    return bounds(together);
}

}  // namespace qw::parts
