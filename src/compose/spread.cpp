// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/spread.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// Neighbours that stand as close as they may: their common place is the mean of what they want.
struct Pool {
    Length sum;
    std::size_t count = 0;
    Length mean() const { return sum / static_cast<double>(count); }
};

/// The ascending values that are nearest to the given ones.
std::vector<Length> ascending(const std::vector<Length>& wanted) {
    std::vector<Pool> pools;
    for (const Length want : wanted) {
        pools.push_back({want, 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            const Pool last = pools.back();
            pools.pop_back();
            pools.back() = {pools.back().sum + last.sum, pools.back().count + last.count};
        }
    }
    std::vector<Length> all;
    for (const Pool& pool : pools) all.insert(all.end(), pool.count, pool.mean());
    return all;
}

}  // namespace

std::optional<std::vector<Length>> spread(const std::vector<Length>& wanted, const std::vector<Length>& gaps, Length low, Length high) {
    // With the gaps before it taken off, each place only has to be no lower than the one before.
    std::vector<Length> before(wanted.size()), without = wanted;
    for (std::size_t i = 1; i < wanted.size(); ++i) before[i] = before[i - 1] + gaps[i - 1];
    for (std::size_t i = 0; i < wanted.size(); ++i) without[i] -= before[i];
    const Length most = wanted.empty() ? high : high - before.back();
    if (most < low) return std::nullopt;
    std::vector<Length> places = ascending(without);
    for (std::size_t i = 0; i < places.size(); ++i) places[i] = std::clamp(places[i], low, most) + before[i];
    return places;
}

std::optional<std::vector<Length>> spread(const std::vector<Length>& wanted, Length gap, Length low, Length high) {
    return spread(wanted, std::vector<Length>(wanted.empty() ? 0 : wanted.size() - 1, gap), low, high);
}

}  // namespace qw::compose
