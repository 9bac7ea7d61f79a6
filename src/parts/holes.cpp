// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/holes.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace qw::parts {

namespace {

double from_segment(Point p, Point a, Point b) {
    const double ax = (p.x - a.x).in_mm(), ay = (p.y - a.y).in_mm(), bx = (b.x - a.x).in_mm(), by = (b.y - a.y).in_mm();
    const double square = bx * bx + by * by;
    const double along = square > 0 ? std::clamp((ax * bx + ay * by) / square, 0.0, 1.0) : 0;
    return std::hypot(ax - along * bx, ay - along * by);
}

const kit::Tool* tool_named(const kit::Pipeline& pipeline, const std::string& name) {
    const auto found = std::find_if(pipeline.tools.begin(), pipeline.tools.end(), [&](const kit::Tool& tool) { return tool.name == name; });
    return found == pipeline.tools.end() ? nullptr : &*found;
}

bool out_of_reach(const Net& net, const Hole& hole, const kit::Tool* tool) { return tool && tool->reach && from_cut(net, hole) > *tool->reach; }

}  // namespace

Length from_cut(const Net& net, const Hole& hole) {
    double nearest = std::numeric_limits<double>::max();
    for (const Ring& ring : net.whole)
        for (std::size_t i = 0; i < ring.size(); ++i) nearest = std::min(nearest, from_segment(hole.at, ring[i], ring[(i + 1) % ring.size()]));
    return Length::mm(nearest);
}

std::string tool_for(const Net& net, const Hole& hole, const kit::Pipeline& pipeline) {
    const kit::Tool* tool = tool_named(pipeline, hole.tool);
    return out_of_reach(net, hole, tool) ? tool->instead : hole.tool;
}

Findings holes_out_of_reach(const Net& net, const kit::Pipeline& pipeline) {
    Findings findings;
    const UnitSystem ruler = net.conditions.system;
    for (const Hole& hole : net.holes) {
        const kit::Tool* tool = tool_named(pipeline, hole.tool);
        if (!out_of_reach(net, hole, tool)) continue;
        const kit::Tool* instead = tool_named(pipeline, tool->instead);
        findings.push_back({"part-hole-reach", Level::note, net.part->file, 0, 0, show(from_cut(net, hole), ruler) + " from the nearest cut line",
                            show(*tool->reach, ruler) + ", the reach of a " + tool->title,
                            "A " + tool->title + " does not reach '" + hole.title + "'",
                            "The list names " + (instead ? "the " + instead->title : std::string("another tool")) +
                                " instead; move the hole nearer to an edge if a punch is wanted"});
    }
    return findings;
}

}  // namespace qw::parts
