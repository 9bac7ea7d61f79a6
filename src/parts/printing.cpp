// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/printing.h"

#include "parts/plane.h"

#include <algorithm>

namespace qw::parts {

namespace {

/// One face while its area is computed.
struct Shown {
    std::size_t face = 0;
    Region panels;                     ///< that it runs across
    Region straight;                   ///< panels and the bleed straight beside their edges: theirs before a neighbour's corner
    Region full;                       ///< panels and all bleed
};

Region panels_of(const Net& net, const Face& face) {
    std::vector<Region> panels;
    for (const std::size_t panel : face.panels) panels.push_back(net.panels[panel].region);
    return united(panels);
}

/// A region and the rectangles beside its edges, without what its corners would add.
Region straight_out(const Region& region, Length by) {
    std::vector<Region> all{region};
    for (const Ring& ring : region)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec from = Vec::of(ring[i]), to = Vec::of(ring[(i + 1) % ring.size()]);
            if ((to - from).length() > 0 && by > Length()) all.push_back(strip_beside(from, to, -by.in_mm()));
        }
    return united(all);
}

template <typename Grow>
Region with_bleed(const Region& printed, const Region& panels, const Net& net, const Bleeds& bleeds, const Grow& grow) {
    const Region outside = without(grow(printed, bleeds.outward), net.whole);
    const Region beside = without(shared(grow(printed, bleeds.over_fold), net.whole), panels);
    return united({printed, outside, beside});
}

void take_away(Region& region, const std::vector<Shown>& all, std::size_t self, Region Shown::*what, bool earlier_only) {
    for (std::size_t i = 0; i < all.size(); ++i)
        if (i != self && (i < self || !earlier_only)) region = without(region, all[i].*what);
}

/// Panels and bleeds of all faces of a side. Where bleeds meet, what is straight beside a panel's edge is its own.
std::vector<Shown> shown_on(const Net& net, Side side, const Bleeds& bleeds) {
    std::vector<Shown> all;
    for (std::size_t i = 0; i < net.faces.size(); ++i)
        if (net.faces[i].side == side) all.push_back({i, panels_of(net, net.faces[i]), {}, {}});
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].straight = with_bleed(all[i].panels, all[i].panels, net, bleeds, straight_out);
        take_away(all[i].straight, all, i, &Shown::panels, false);
        take_away(all[i].straight, all, i, &Shown::straight, true);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        Region corners = with_bleed(all[i].panels, all[i].panels, net, bleeds, grown);
        take_away(corners, all, i, &Shown::panels, false);
        take_away(corners, all, i, &Shown::straight, false);
        take_away(corners, all, i, &Shown::full, true);
        all[i].full = united(all[i].straight, corners);
    }
    return all;
}

/// What of a side is not printed, and why.
struct White {
    Region glued, no_ink, hidden;
};

White white_on(const Net& net, const Folded& folded, Side side) {
    std::vector<Region> stuck, kept;
    for (std::size_t i = 0; i < net.panels.size(); ++i) stuck.push_back(glued(net, folded, i, side));
    for (const NoInk& area : net.no_ink)
        if (area.side == side) kept.push_back(area.region);
    return {united(stuck), united(kept), hidden(net, folded, side)};
}

FaceArea area_of(const Net& net, const Shown& shown, const White& white, const Bleeds& bleeds) {
    const Region seen = without(shown.panels, white.hidden);
    // What covers it may come to lie as far off as a cut may.
    const Region unseen = without(white.hidden, grown(seen, bleeds.outward));
    const Region printed = without(shown.panels, united({unseen, white.glued, white.no_ink}));
    FaceArea area;
    area.face = shown.face;
    area.frame = net.faces[shown.face].frame;
    area.canvas = area.frame.inset(-max(bleeds.outward, bleeds.over_fold));
    area.ink = without(shared(with_bleed(printed, shown.panels, net, bleeds, grown), shown.full), white.no_ink);
    const double all = area_mm2(shown.full);
    area.saved = all > 0 ? std::clamp(1 - area_mm2(area.ink) / all, 0.0, 1.0) : 0;
    return area;
}

}  // namespace

std::vector<FaceArea> printed(const Net& net, const Folded& folded, Side side, const Bleeds& bleeds) {
    const White white = white_on(net, folded, side);
    std::vector<FaceArea> areas;
    for (const Shown& shown : shown_on(net, side, bleeds)) areas.push_back(area_of(net, shown, white, bleeds));
    return areas;
}

Region footprint(const Net& net, const std::vector<FaceArea>& front, const std::vector<FaceArea>& back) {
    std::vector<Region> all{net.whole};
    for (const std::vector<FaceArea>* side : {&front, &back})
        for (const FaceArea& area : *side) all.push_back(area.ink);
    return united(all);
}

}  // namespace qw::parts
