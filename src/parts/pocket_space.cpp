// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/pocket_space.h"

#include "parts/lying.h"
#include "parts/outline.h"
#include "parts/plane.h"

#include <algorithm>

namespace qw::parts {

namespace {

/// Turns the opening upward.
Matrix upright(int opens) {
    constexpr double cosines[4] = {1, 0, -1, 0}, sines[4] = {0, -1, 0, 1};  // clockwise by as much as it is turned
    return {cosines[opens], sines[opens], -sines[opens], cosines[opens], 0, 0};
}

bool inside(const Lying& state, std::size_t panel, const Pocket& pocket) {
    if (panel == pocket.front || panel == pocket.back) return true;
    const int out = state.order[pocket.front][pocket.back];
    return state.order[pocket.front][panel] == out && state.order[panel][pocket.back] == out;
}

/// Where glue holds the two walls, or what lies between them, together.
Region glue_in(const Net& net, const Lying& state, const Pocket& pocket) {
    std::vector<Region> areas;
    for (const Glue& glue : net.glue)
        if (state.order[glue.tab][glue.on] != 0 && inside(state, glue.tab, pocket) && inside(state, glue.on, pocket))
            areas.push_back(shared(state.placed[glue.tab], state.placed[glue.on]));
    return united(areas);
}

/// The longest run of a region along a horizontal line, half a unit above `y` so that it meets no corner.
Length longest_run(const Region& region, Length y) {
    const double at = static_cast<double>(y.in_units()) + 0.5;
    std::vector<double> crossings;
    for (const Ring& ring : region)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
            const auto low = static_cast<double>(a.y.in_units()), high = static_cast<double>(b.y.in_units());
            if ((low < at) == (high < at)) continue;
            const double part = (at - low) / (high - low);
            crossings.push_back(static_cast<double>(a.x.in_units()) + part * static_cast<double>((b.x - a.x).in_units()));
        }
    std::sort(crossings.begin(), crossings.end());
    double longest = 0;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) longest = std::max(longest, crossings[i + 1] - crossings[i]);
    return Length::units(static_cast<std::int64_t>(longest + 0.5));
}

}  // namespace

PocketSpace::PocketSpace(const Net& net, const Folded& folded, const Pocket& pocket) {
    if (pocket.after >= folded.states.size()) return;
    const Lying state = lying_as(net.panels, folded.states[pocket.after]);
    const Matrix turned = upright(pocket.opens).after(back_to_flat(state.poses[pocket.back]));
    const Region walls = mapped(shared(state.placed[pocket.front], state.placed[pocket.back]), turned);
    if (!is_area(walls)) return;
    box_ = bounds(walls);
    const Region box{{{box_.left, box_.bottom}, {box_.right, box_.bottom}, {box_.right, box_.top}, {box_.left, box_.top}}};
    const Region open = shared(swept_up(walls, box_.height()), box);
    free_ = without(open, swept_up(mapped(glue_in(net, state, pocket), turned), -box_.height()));
}

Length PocketSpace::width_to(Length depth) const {
    if (depth > box_.height() || free_.empty()) return {};
    return longest_run(free_, min(box_.top - depth, box_.top - Length::units(1)));
}

Length PocketSpace::depth_for(Length width) const {
    Length fits, fails = box_.height() + same_point;
    if (width_to({}) < width) return {};
    while (fails - fits > Length::mm(0.001)) {
        const Length middle = (fits + fails) / 2;
        (width_to(middle) >= width ? fits : fails) = middle;
    }
    return abs(box_.height() - fits) < same_point ? box_.height() : fits;
}

PocketRoom PocketSpace::room() const {
    const Length width = width_to(box_.height() / 2);
    return {width, depth_for(width / 2)};
}

PocketRoom room_of(const Net& net, const Folded& folded, const Pocket& pocket) { return PocketSpace(net, folded, pocket).room(); }

}  // namespace qw::parts
