// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/told.h"

namespace qw::parts {

ToldPart told(const Net& net, const Folded& folded, const std::string& set, int count) {
    ToldPart part{set, net.part->name, net.part->title, count, net.conditions.scale, bounds(net.whole).size(), folded.size, folded.thickness, {}, {}};
    for (const Panel& panel : net.panels) part.panels.push_back({panel.name, panel.title, bounds(panel.region).size()});
    for (const Pocket& pocket : net.pockets) part.pockets.push_back({pocket.name, pocket.title, room_of(net, folded, pocket)});
    return part;
}

}  // namespace qw::parts
