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

bool glued_together(const Net& net, std::size_t a, std::size_t b) {
    return std::any_of(net.glue.begin(), net.glue.end(), [&](const Glue& g) { return (g.tab == a && g.on == b) || (g.tab == b && g.on == a); });
}

/// Where a is the next layer to b.
Region touching(const Lying& state, std::size_t a, std::size_t b) {
    Region both = shared(state.placed[a], state.placed[b]);
    for (std::size_t i = 0; i < state.placed.size() && !both.empty(); ++i)
        if (state.order[a][i] == state.order[a][b] && state.order[i][b] == state.order[a][b]) both = without(both, state.placed[i]);
    return both;
}

/// Where two layers from one wall to the other lie on each other unglued: what goes in finds its way there.
Region gaps_in(const Net& net, const Lying& state, const Pocket& pocket) {
    std::vector<Region> gaps;
    for (std::size_t a = 0; a < state.placed.size(); ++a)
        for (std::size_t b = 0; b < a; ++b)
            if (state.order[a][b] != 0 && part_of_pocket(state, a, pocket) && part_of_pocket(state, b, pocket) && !glued_together(net, a, b))
                gaps.push_back(touching(state, a, b));
    return united(gaps);
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

bool part_of_pocket(const Lying& state, std::size_t panel, const Pocket& pocket) {
    if (panel == pocket.front || panel == pocket.back) return true;
    const int out = state.order[pocket.front][pocket.back];
    return out != 0 && state.order[pocket.front][panel] == out && state.order[panel][pocket.back] == out;
}

PocketSpace::PocketSpace(const Net& net, const Folded& folded, const Pocket& pocket) {
    if (pocket.after >= folded.states.size()) return;
    const Lying state = lying_as(net.panels, folded.states[pocket.after]);
    const Matrix turned = upright(pocket.opens).after(back_to_flat(state.poses[pocket.back]));
    const Region common = shared(state.placed[pocket.front], state.placed[pocket.back]), walls = mapped(common, turned);
    if (!is_area(common)) return;
    box_ = bounds(walls);
    const Region box{{{box_.left, box_.bottom}, {box_.right, box_.bottom}, {box_.right, box_.top}, {box_.left, box_.top}}};
    const Region back = mapped(state.placed[pocket.back], turned), up = swept_up(walls, bounds(back).height());
    const Region barred = mapped(without(common, gaps_in(net, state, pocket)), turned);
    const Region shadow = is_area(barred) ? swept_up(barred, -box_.height()) : Region();
    free_ = without(shared(up, box), shadow);
    closed_ = without(shared(up, back), shadow);
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

Length PocketSpace::height_within_back(Length width) const {
    // Where a thing's left edge can be; its height is a run up there.
    const Region left_edges = shared(closed_, moved(closed_, -width, {}));
    const Region on_its_side = mapped(left_edges, {0, 1, -1, 0, 0, 0});
    Length highest;
    for (const Ring& ring : on_its_side)
        for (const Point& corner : ring)
            for (const std::int64_t beside : {-1, 0}) highest = max(highest, longest_run(on_its_side, corner.y + Length::units(beside)));
    return highest;
}

PocketRoom PocketSpace::room() const {
    const Length width = width_to(box_.height() / 2);
    return {width, depth_for(width / 2)};
}

PocketRoom room_of(const Net& net, const Folded& folded, const Pocket& pocket) { return PocketSpace(net, folded, pocket).room(); }

}  // namespace qw::parts
