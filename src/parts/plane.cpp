// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/plane.h"

#include <algorithm>

namespace qw::parts {

Region strip_beside(Vec from, Vec to, double deep) {
    const Vec over = unit(to - from).left() * deep;
    Ring ring{from.point(), to.point(), (to + over).point(), (from + over).point()};
    if (deep < 0) std::reverse(ring.begin(), ring.end());
    return {ring};
}

Region swept_up(const Region& region, Length dy) {
    std::vector<Region> all{region, moved(region, {}, dy)};
    for (const Ring& ring : region)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            Ring way{a, b, {b.x, b.y + dy}, {a.x, a.y + dy}};
            if (area_mm2({way}) < 0) std::reverse(way.begin(), way.end());
            all.push_back({way});
        }
    return united(all);
}

}  // namespace qw::parts
