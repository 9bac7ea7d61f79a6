// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fold_move.h"

#include "parts/outline.h"
#include "parts/telling.h"

#include <algorithm>
#include <cmath>

namespace qw::parts {

namespace {

/// Lines are one line when their ends miss it by no more than this: edges match within half of it, before and after
/// earlier folds.
constexpr double one_line_mm = 0.02;

bool moves_with(const Fold& fold, std::size_t panel) { return std::find(fold.moves.begin(), fold.moves.end(), panel) != fold.moves.end(); }

/// The edges between what moves and what stays, as they lie.
std::vector<Hinge> edges_between(const std::vector<SharedEdge>& edges, const Lying& lying, const Fold& fold) {
    std::vector<Hinge> hinges;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const SharedEdge& edge = edges[i];
        if (distance(edge.from, edge.to) < least_width.in_mm() || moves_with(fold, edge.a) == moves_with(fold, edge.b)) continue;
        const std::size_t moving = moves_with(fold, edge.a) ? edge.a : edge.b, staying = moving == edge.a ? edge.b : edge.a;
        const Matrix& place = lying.poses[staying].place;
        hinges.push_back({i, moving, staying, Vec::of(mapped(edge.from, place)), Vec::of(mapped(edge.to, place))});
    }
    return hinges;
}

/// Whether a panel lies on the left of its edge as it lies, seen along from → to.
bool on_left(const SharedEdge& edge, std::size_t panel, const Lying& lying) { return (panel == edge.a) != lying.poses[panel].back_up; }

const Hinge* longest(const std::vector<Hinge>& hinges, const std::vector<SharedEdge>& edges) {
    const Hinge* best = nullptr;
    for (const Hinge& hinge : hinges)
        if (edges[hinge.edge].straight && (!best || (hinge.to - hinge.from).length() > (best->to - best->from).length() + 1e-6)) best = &hinge;
    return best;
}

bool lies_on(const Hinge& hinge, const FoldLine& line) {
    return std::abs(beside(hinge.from, line.through, line.along)) <= one_line_mm && std::abs(beside(hinge.to, line.through, line.along)) <= one_line_mm;
}

/// Turns the line so that most of what moves lies on its left.
void settle_side(FoldLine& line, const std::vector<SharedEdge>& edges, const Lying& lying) {
    double balance = 0;
    for (const Hinge& hinge : line.hinges) {
        const bool left = on_left(edges[hinge.edge], hinge.moves, lying) == (dot(hinge.to - hinge.from, line.along) > 0);
        balance += (hinge.to - hinge.from).length() * (left ? 1 : -1);
    }
    if (balance < 0) line.along = line.along * -1;
}

FoldRefusal no_line(const Net& net, const Fold& fold) {
    return {"part-tears", "The fold of " + titles_of(net, fold.moves) + " has no line: no straight edge joins what moves to a panel that stays",
            "name the panels that move on one side of a score line, and none on its other side"};
}

FoldRefusal torn(const Net& net, const Fold& fold, const Hinge& hinge, bool straight) {
    const std::string pair = title_of(net, hinge.moves) + " and " + title_of(net, hinge.stays);
    if (!straight)
        return {"part-tears", "The fold of " + titles_of(net, fold.moves) + " would bend the paper between " + pair + " along a curve",
                "let both move, or both stay"};
    return {"part-tears", pair + " are in one piece, and the fold of " + titles_of(net, fold.moves) + " would tear them apart: their edge does not lie on its line",
            "let " + title_of(net, hinge.stays) + " move too, or make this fold later, when their edges lie on one line"};
}

}  // namespace

FoundLine line_of(const Net& net, const std::vector<SharedEdge>& edges, const Lying& lying, std::size_t fold) {
    FoundLine found;
    const Fold& asked = net.folds[fold];
    const std::vector<Hinge> between = edges_between(edges, lying, asked);
    const Hinge* main = longest(between, edges);
    if (!main) {
        found.refusals.push_back(no_line(net, asked));
        return found;
    }
    found.line.through = main->from;
    found.line.along = unit(main->to - main->from);
    for (const Hinge& hinge : between) {
        const bool straight = edges[hinge.edge].straight;
        if (straight && lies_on(hinge, found.line)) found.line.hinges.push_back(hinge);
        else found.refusals.push_back(torn(net, asked, hinge, straight));
    }
    settle_side(found.line, edges, lying);
    return found;
}

}  // namespace qw::parts
