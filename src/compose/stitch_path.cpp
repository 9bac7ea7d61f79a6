// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/stitch_path.h"

#include "compose/spread.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length thread_apart = Length::mm(1.8);

std::vector<int> passes_by_station(const std::vector<Pass>& passes, std::size_t stations) {
    std::vector<int> count(stations);
    for (const Pass& pass : passes) ++count[static_cast<std::size_t>(pass.station)];
    return count;
}

/// Beside each other at their station; those that come from and go to the left stand left.
void set_beside(StitchPath& path) {
    const auto pull = [&](std::size_t i) {
        int sum = 0;
        if (i > 0) sum += path.passes[i - 1].station - path.passes[i].station;
        if (i + 1 < path.passes.size()) sum += path.passes[i + 1].station - path.passes[i].station;
        return sum;
    };
    for (std::size_t s = 0; s < path.stations.size(); ++s) {
        std::vector<std::size_t> here;
        for (std::size_t i = 0; i < path.passes.size(); ++i)
            if (path.passes[i].station == static_cast<int>(s)) here.push_back(i);
        std::stable_sort(here.begin(), here.end(), [&](std::size_t a, std::size_t b) { return pull(a) < pull(b); });
        for (std::size_t n = 0; n < here.size(); ++n)
            path.passes[here[n]].x = path.stations[s] + thread_apart * (static_cast<double>(n) - (static_cast<double>(here.size()) - 1) / 2);
    }
}

/// Short moves first; a move is higher than all that it goes over, so that their uprights never cross it.
void set_lanes(std::vector<Move>& moves) {
    std::vector<Move*> by_length;
    for (Move& move : moves) by_length.push_back(&move);
    std::stable_sort(by_length.begin(), by_length.end(), [](const Move* a, const Move* b) { return a->right() - a->left() < b->right() - b->left(); });
    const Length touch = Length::mm(0.9);
    for (std::size_t i = 0; i < by_length.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            Move &move = *by_length[i], &under = *by_length[j];
            if (move.outside == under.outside && move.left() < under.right() + touch && under.left() < move.right() + touch)
                move.lane = std::max(move.lane, under.lane + 1);
        }
}

}  // namespace

std::size_t StitchPath::lanes(bool outside) const {
    std::size_t most = 0;
    for (const Move& move : moves)
        if (move.outside == outside) most = std::max(most, move.lane + 1);
    return most;
}

std::optional<StitchPath> lay_path(const kit::SewingTemplate& sewing, const std::vector<double>& stations, Length left, Length right, Length apart) {
    StitchPath path;
    for (const int station : sewing.path) {
        if (station < 1 || station > static_cast<int>(stations.size())) return std::nullopt;
        path.passes.push_back({station - 1, {}});
    }
    const auto count = passes_by_station(path.passes, stations.size());
    std::vector<Length> wanted, gaps;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        wanted.push_back(left + (right - left) * stations[i]);
        if (i > 0) gaps.push_back(apart + thread_apart * (std::max(count[i - 1] - 1, 0) + std::max(count[i] - 1, 0)) / 2);
    }
    const Length end = thread_apart * 2;
    const auto places = spread(wanted, gaps, left + end, right - end);
    if (!places || path.passes.empty()) return std::nullopt;
    path.stations = *places;
    set_beside(path);
    // From the side where the thread begins it goes through the first hole, and lies on the other side after it.
    bool outside = sewing.begins_inside;
    for (std::size_t i = 1; i < path.passes.size(); ++i, outside = !outside)
        path.moves.push_back({i, outside, path.passes[i - 1].x, path.passes[i].x, 0});
    path.begins_outside = !sewing.begins_inside;
    path.ends_outside = outside;
    set_lanes(path.moves);
    return path;
}

}  // namespace qw::compose
