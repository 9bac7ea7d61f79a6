// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/folding.h"
#include "parts/lying.h"
#include "parts/outline.h"
#include "parts/stiffness.h"

#include <algorithm>

namespace qw::parts {

namespace {

bool all_folded(const Net& net, const Folded& folded) { return folded.states.size() == net.folds.size() + 1; }

/// What lies on a side of a panel lies above it when that side is up, else below.
bool lies_on_side(const Lying& state, std::size_t what, std::size_t panel, Side side) {
    const bool up = state.poses[panel].back_up == (side == Side::back);
    return state.order[what][panel] == (up ? 1 : -1);
}

/// Of a panel's side, where a panel lies that is held against it; in the flat net.
Region covered_by_held(const Net& net, const Lying& state, const std::vector<std::size_t>& held, std::size_t panel, Side side) {
    std::vector<Region> covers;
    for (std::size_t i = 0; i < net.panels.size(); ++i)
        if (held[i] == held[panel] && lies_on_side(state, i, panel, side)) covers.push_back(shared(state.placed[i], state.placed[panel]));
    return mapped(united(covers), back_to_flat(state.poses[panel]));
}

}  // namespace

Region glued(const Net& net, const Folded& folded, std::size_t panel, Side side) {
    if (!all_folded(net, folded)) return {};
    const Lying closed = lying_as(net.panels, folded.states.back());
    std::vector<Region> areas;
    for (const Glue& glue : net.glue) {
        if (glue.tab != panel && glue.on != panel) continue;
        const std::size_t other = glue.tab == panel ? glue.on : glue.tab;
        if (!lies_on_side(closed, other, panel, side)) continue;
        areas.push_back(mapped(shared(closed.placed[panel], closed.placed[other]), back_to_flat(closed.poses[panel])));
    }
    return united(areas);
}

Region hidden(const Net& net, const Folded& folded, Side side) {
    if (!all_folded(net, folded) || net.glue.empty()) return {};
    std::vector<Lying> states;
    for (const State& state : folded.states) states.push_back(lying_as(net.panels, state));
    const std::vector<std::size_t> held = held_together(net, folded, states.back());
    std::vector<Region> areas;
    for (const Face& face : net.faces) {
        if (face.side != side || face.after >= states.size()) continue;
        for (const std::size_t panel : face.panels) {
            Region area = net.panels[panel].region;
            for (std::size_t k = face.after; k < states.size() && !area.empty(); ++k)
                area = shared(area, covered_by_held(net, states[k], held, panel, side));
            if (is_area(area)) areas.push_back(area);
        }
    }
    return united(areas);
}

}  // namespace qw::parts
