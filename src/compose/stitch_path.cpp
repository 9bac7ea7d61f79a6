// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/stitch_path.h"

#include "compose/spread.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// Beside each other at one station. A block's have the numbers of turns round the spine between them.
Length thread_apart(const kit::SewingTemplate& sewing) { return Length::mm(sewing.from_the_side() ? 2.8 : 1.8); }

std::vector<int> passes_by_station(const std::vector<Pass>& passes, std::size_t stations) {
    std::vector<int> count(stations);
    for (const Pass& pass : passes) ++count[static_cast<std::size_t>(pass.station)];
    return count;
}

/// Where the thread between two passes lies, seen from one of them: left, right or neither.
int way(const kit::SewingTemplate& sewing, std::size_t move, int here, int there) {
    if (sewing.after(move) == kit::Around::head) return -1;
    if (sewing.after(move) == kit::Around::tail) return 1;
    return there - here;
}

/// Beside each other at their station; those that come from and go to the left stand left.
void set_beside(StitchPath& path, const kit::SewingTemplate& sewing) {
    const auto pull = [&](std::size_t i) {
        int sum = 0;
        if (i > 0) sum += way(sewing, i - 1, path.passes[i].station, path.passes[i - 1].station);
        if (i + 1 < path.passes.size()) sum += way(sewing, i, path.passes[i].station, path.passes[i + 1].station);
        return sum;
    };
    for (std::size_t s = 0; s < path.stations.size(); ++s) {
        std::vector<std::size_t> here;
        for (std::size_t i = 0; i < path.passes.size(); ++i)
            if (path.passes[i].station == static_cast<int>(s)) here.push_back(i);
        std::stable_sort(here.begin(), here.end(), [&](std::size_t a, std::size_t b) { return pull(a) < pull(b); });
        for (std::size_t n = 0; n < here.size(); ++n)
            path.passes[here[n]].x = path.stations[s] + thread_apart(sewing) * (static_cast<double>(n) - (static_cast<double>(here.size()) - 1) / 2);
    }
}

/// From the side where the thread begins it goes through the first hole, and lies on the other side after it. A turn
/// brings it back to the side before that.
void set_moves(StitchPath& path, const kit::SewingTemplate& sewing, Length left, Length right) {
    bool outside = sewing.begins_inside;
    for (std::size_t i = 1; i < path.passes.size(); ++i) {
        Move move{i, sewing.after(i - 1), outside, path.passes[i - 1].x, path.passes[i].x, {}};
        if (move.around == kit::Around::head) left -= turn_apart;
        if (move.around == kit::Around::tail) right += turn_apart;
        const Length beyond = move.around == kit::Around::head ? left : right;
        if (move.around == kit::Around::nothing) move.stretches = {{outside, move.from, move.to, 0, false}};
        else if (move.around != kit::Around::spine) move.stretches = {{outside, move.from, beyond, 0, true}, {!outside, move.to, beyond, 0, true}};
        if (move.around == kit::Around::nothing) outside = !outside;
        path.moves.push_back(std::move(move));
    }
    path.ends_outside = outside;
}

/// Short stretches first; one is higher than all that it goes over, so that their uprights never cross it.
void set_lanes(std::vector<Move>& moves) {
    std::vector<Stretch*> by_length;
    for (Move& move : moves)
        for (Stretch& stretch : move.stretches) by_length.push_back(&stretch);
    std::stable_sort(by_length.begin(), by_length.end(), [](const Stretch* a, const Stretch* b) { return a->right() - a->left() < b->right() - b->left(); });
    const Length touch = Length::mm(0.9);
    for (std::size_t i = 0; i < by_length.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            Stretch &one = *by_length[i], &under = *by_length[j];
            if (one.outside == under.outside && one.left() < under.right() + touch && under.left() < one.right() + touch)
                one.lane = std::max(one.lane, under.lane + 1);
        }
}

}  // namespace

std::size_t StitchPath::lanes(bool outside) const {
    std::size_t most = 0;
    for (const Move& move : moves)
        for (const Stretch& stretch : move.stretches)
            if (stretch.outside == outside) most = std::max(most, stretch.lane + 1);
    return most;
}

std::optional<StitchPath> lay_path(const kit::SewingTemplate& sewing, const std::vector<double>& stations, Length left, Length right, Length apart) {
    StitchPath path;
    for (const int station : sewing.path) {
        if (station < 1 || station > static_cast<int>(stations.size())) return std::nullopt;
        path.passes.push_back({station - 1, {}});
    }
    const auto count = passes_by_station(path.passes, stations.size());
    const Length beside = thread_apart(sewing);
    std::vector<Length> wanted, gaps;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        wanted.push_back(left + (right - left) * stations[i]);
        if (i > 0) gaps.push_back(apart + beside * (std::max(count[i - 1] - 1, 0) + std::max(count[i] - 1, 0)) / 2);
    }
    const Length end = beside * 2;
    const auto places = spread(wanted, gaps, left + end, right - end);
    if (!places || path.passes.empty()) return std::nullopt;
    path.stations = *places;
    path.begins_outside = !sewing.begins_inside;
    path.from_the_side = sewing.from_the_side();
    set_beside(path, sewing);
    set_moves(path, sewing, left, right);
    set_lanes(path.moves);
    return path;
}

}  // namespace qw::compose
