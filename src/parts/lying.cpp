// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/lying.h"

#include "parts/outline.h"

#include <algorithm>

namespace qw::parts {

namespace {

/// The level of one panel, once those of all under it are known.
bool find_level(std::size_t i, const std::vector<std::vector<int>>& order, std::vector<int>& levels, std::vector<char>& open) {
    if (levels[i] >= 0) return true;
    if (open[i]) return false;
    open[i] = 1;
    int level = 0;
    for (std::size_t j = 0; j < order.size(); ++j) {
        if (order[i][j] <= 0) continue;
        if (!find_level(j, order, levels, open)) return false;
        level = std::max(level, levels[j] + 1);
    }
    levels[i] = level;
    return true;
}

}  // namespace

Lying lying_flat(const std::vector<Panel>& panels) {
    Lying lying;
    lying.poses.resize(panels.size());
    for (const Panel& panel : panels) lying.placed.push_back(panel.region);
    lying.order.assign(panels.size(), std::vector<int>(panels.size(), 0));
    return lying;
}

Lying lying_as(const std::vector<Panel>& panels, const State& state) {
    Lying lying = lying_flat(panels);
    lying.poses = state;
    for (std::size_t i = 0; i < panels.size(); ++i) lying.placed[i] = mapped(panels[i].region, state[i].place);
    for (std::size_t i = 0; i < panels.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            if (state[i].level == state[j].level || !is_area(shared(lying.placed[i], lying.placed[j]))) continue;
            lying.order[i][j] = state[i].level > state[j].level ? 1 : -1;
            lying.order[j][i] = -lying.order[i][j];
        }
    return lying;
}

std::optional<std::vector<int>> levels_of(const std::vector<std::vector<int>>& order) {
    std::vector<int> levels(order.size(), -1);
    std::vector<char> open(order.size(), 0);
    for (std::size_t i = 0; i < order.size(); ++i)
        if (!find_level(i, order, levels, open)) return std::nullopt;
    return levels;
}

std::vector<Region> depths_of(const std::vector<Region>& regions) {
    std::vector<Region> depths;
    for (const Region& region : regions) {
        Region deeper = region;        // what of it lies on the depths so far, from the deepest up
        std::vector<Region> next = depths;
        for (std::size_t d = 0; d < depths.size(); ++d) {
            next[d] = united(depths[d], deeper);
            deeper = shared(depths[d], deeper);
        }
        if (is_area(deeper)) next.push_back(deeper);
        depths = std::move(next);
    }
    return depths;
}

Matrix back_to_flat(const Pose& pose) {
    const Matrix& m = pose.place;      // an isometry: its inverse turns by the transposed part
    return {m.a, m.c, m.b, m.d, -(m.a * m.e + m.b * m.f), -(m.c * m.e + m.d * m.f)};
}

}  // namespace qw::parts
