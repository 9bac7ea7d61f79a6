// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/outline.h"

#include "parts/arcs.h"
#include "parts/outline_crossing.h"
#include "parts/plane.h"

#include <cmath>

namespace qw::parts {

namespace {

using Kind = kit::OutlineStep::Kind;

/// A step that is drawn, with what its rounding takes of the edges beside it.
struct Node {
    const Step* step = nullptr;
    std::size_t index = 0;
    double takes = 0;                  ///< mm of each edge
    Point entry, exit;                 ///< where the rounding begins and ends; the corner itself without one
    Point centre;
    bool clockwise = false;
};

bool same(Point a, Point b) { return distance(a, b) < same_point.in_mm(); }

std::vector<Node> nodes_of(const std::vector<Step>& steps) {
    std::vector<Node> nodes;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const Step& step = steps[i];
        if (step.kind != Kind::arc && !nodes.empty() && same(step.at, nodes.back().step->at)) continue;
        nodes.push_back({&step, i, 0, step.at, step.at, {}, false});
    }
    while (nodes.size() > 1 && nodes.back().step->kind != Kind::arc && same(nodes.back().step->at, nodes.front().step->at)) nodes.pop_back();
    return nodes;
}

class Drawing {
public:
    explicit Drawing(const std::vector<Step>& steps) : nodes_(nodes_of(steps)) {}

    MadeOutline made() {
        for (std::size_t i = 0; i < nodes_.size(); ++i) round_off(i);
        for (std::size_t i = 0; i < nodes_.size(); ++i) check_room(i);
        if (made_.faults.empty()) draw();
        if (made_.faults.empty()) judge();
        return made_;
    }

private:
    Node& before(std::size_t i) { return nodes_[(i + nodes_.size() - 1) % nodes_.size()]; }
    Node& after(std::size_t i) { return nodes_[(i + 1) % nodes_.size()]; }
    bool ends_where_it_began() { return nodes_.size() > 1 && same(nodes_.back().step->at, nodes_.front().step->at); }

    /// Whether the way from this node to the next is straight.
    bool straight_from(std::size_t i) {
        if (i + 1 < nodes_.size()) return nodes_[i + 1].step->kind != Kind::arc;
        return !ends_where_it_began();
    }

    void fault(std::size_t step, const char* code, std::string wrong, std::string expected, std::string mend) {
        made_.faults.push_back({step, code, std::move(wrong), std::move(expected), std::move(mend)});
    }

    void round_off(std::size_t i) {
        Node& node = nodes_[i];
        if (node.step->kind != Kind::rounded || node.step->radius < same_point) {
            if (node.step->kind == Kind::rounded && node.step->radius < Length())
                fault(node.index, "rounding-without-room", "is rounded with less than nothing, " + show_metric(node.step->radius), "a radius of 0 or more", {});
            return;
        }
        const std::size_t last = (i + nodes_.size() - 1) % nodes_.size();
        if (nodes_.size() < 3 || !straight_from(i) || !straight_from(last)) {
            fault(node.index, "rounding-without-room", "is rounded beside an arc", "straight edges on both sides of a rounded corner",
                  "end the arc before the corner, or draw the rounding as an arc of its own");
            return;
        }
        const Vec corner = Vec::of(node.step->at), in = unit(corner - Vec::of(before(i).step->at)), out = unit(Vec::of(after(i).step->at) - corner);
        const double half_turn = std::atan2(std::abs(cross(in, out)), dot(in, out)) / 2;  // of the direction, 0: straight on
        node.takes = node.step->radius.in_mm() * std::tan(half_turn);
        node.clockwise = cross(in, out) < 0;
        if (node.takes < same_point.in_mm()) return;
        node.entry = (corner - in * node.takes).point();
        node.exit = (corner + out * node.takes).point();
        const Vec inward = node.clockwise ? in.left() * -1 : in.left();
        node.centre = (corner - in * node.takes + inward * node.step->radius.in_mm()).point();
    }

    /// Two roundings share the straight edge between them.
    void check_room(std::size_t i) {
        if (!straight_from(i)) return;
        const Node &here = nodes_[i], &next = after(i);
        const double length = distance(here.step->at, next.step->at), taken = here.takes + next.takes;
        if (taken <= length + same_point.in_mm()) return;
        const Node& larger = here.takes >= next.takes ? here : next;
        fault(larger.index, "rounding-without-room",
              "is rounded with " + show_metric(larger.step->radius) + ", and the roundings take " + show_metric(Length::mm(taken)) +
                  " of an edge of " + show_metric(Length::mm(length)),
              "roundings that fit on their edges", "make the radius smaller, at most " + show_metric(Length::mm(larger.step->radius.in_mm() * length / taken)));
    }

    void line_to(Point to, std::size_t step) {
        if (same(at_, to)) return;
        add({to, std::nullopt, false}, step);
    }

    void add(Outline::Edge edge, std::size_t step) {
        at_ = edge.to;
        outline_.edges.push_back(edge);
        steps_.push_back(step);
    }

    void go_round(const Node& node) {
        line_to(node.entry, node.index);
        if (node.entry != node.exit) add({node.exit, node.centre, node.clockwise}, node.index);
    }

    void arc_to(const Node& node) {
        const auto circle = circle_through(at_, node.step->through, node.step->at);
        if (circle) return add({node.step->at, circle->centre, circle->clockwise}, node.index);
        fault(node.index, "arc-on-a-line", "is an arc whose three points lie on a line",
              "a point that the arc goes through beside the line from its beginning to its end", "write a corner where the edge is straight");
    }

    void draw() {
        if (nodes_.empty()) return;
        at_ = outline_.start = nodes_.front().exit;
        for (std::size_t i = 1; i < nodes_.size(); ++i) {
            if (nodes_[i].step->kind == Kind::arc) arc_to(nodes_[i]);
            else go_round(nodes_[i]);
        }
        go_round(nodes_.front());
        if (outline_.edges.empty()) return;
        if (!same(at_, outline_.start)) line_to(outline_.start, nodes_.front().index);
        outline_.edges.back().to = outline_.start;  // what is nearer than a point's width is closed exactly
    }

    void judge() {
        const std::size_t first = nodes_.empty() ? 0 : nodes_.front().index;
        const double area = outline_.edges.empty() ? 0 : area_mm2(outline_.region());
        if (const auto edge = crossing_edge(outline_))
            fault(steps_[*edge], "outline-crosses-itself", "crosses or touches itself", "an outline that meets itself nowhere",
                  "look at the order of its steps, and at lengths that have become too small");
        else if (std::abs(area) < least_area_mm2)
            fault(first, "outline-holds-nothing", "holds no area", "an outline round an area", "look at lengths that have become too small");
        if (!made_.faults.empty()) return;
        made_.outline = area < 0 ? reversed(outline_) : outline_;
    }

    std::vector<Node> nodes_;
    Outline outline_;
    std::vector<std::size_t> steps_;   ///< of each edge
    Point at_;
    MadeOutline made_;
};

}  // namespace

MadeOutline outline_of(const std::vector<Step>& steps) { return Drawing(steps).made(); }

bool is_area(const Region& region) {
    if (area_mm2(region) < least_area_mm2) return false;
    return area_mm2(grown(region, -(least_width / 2))) > 0;
}

}  // namespace qw::parts
