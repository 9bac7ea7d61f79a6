// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "parts/net.h"

#include <string>
#include <vector>

namespace qw::parts {

/// Where a panel lies after some folds, seen from the viewer of the flat net's front.
struct Pose {
    Matrix place;                      ///< from the flat net (e, f in points); a reflection when it is turned over
    bool back_up = false;              ///< its back side faces the viewer
    int level = 0;                     ///< panels that overlap have different levels; higher is nearer to the viewer
};

/// How the part lies after so many folds: one pose a panel.
using State = std::vector<Pose>;

/// A line to score, in the flat net.
struct ScoreLine {
    Point from, to;
    bool valley = true;                ///< as seen on the front of the sheet
    std::size_t fold = 0;              ///< index
    std::size_t moves = 0, stays = 0;  ///< panels on its two sides
};

struct Folded {
    std::vector<State> states;         ///< states[0] is flat, states[n] after n folds; fewer when a fold cannot be made
    std::vector<ScoreLine> scores;
    Size size;                         ///< of the closed part, as it lies
    Length thickness;                  ///< most layers over one point × caliper
    int most_layers = 0;
    /// What is wrong, as far as polygons tell; rules `part-…`, file and line those of the template. See check_folding.
    Findings findings;
};

/// Folds the net as a chain of half turns and looks at each state:
/// - part-tears: two panels that are in one piece are moved apart, or a fold's lines do not lie on one line, or it has none
/// - part-passes-through: a panel would go through another on its way, or lies across a fold that is closed round it
/// - part-inner-panel: what is folded in does not end before the next fold by what the paper needs: a half circle round
///   the layers that it encloses, at the middle of the paper, takes π/4 · (layers + 1) calipers of each side (geometry).
///   Layers that the same fold bends count, but need not end; a corner that is narrower than 2 mm there gives way
/// - part-tab-uncovered: a glued tab does not lie next to the panel it is glued to, or is not wholly inside it
/// - part-face-turned, part-face-hidden: a face is not upright, or not to be seen, when and from where it says; what the
///   front of a pocket, and what lies in it, covers of the pocket's back is not missed
/// - part-layers: the closed part's layers are not in the order that the template says
Folded fold(const Net& net);

/// Which part of a panel's side is glued to another: nothing is printed there. In the flat net; empty while a fold cannot
/// be made.
Region glued(const Net& net, const Folded& folded, std::size_t panel, Side side);
/// Which part of a panel's side nobody sees in any state from the one its face is looked at to the closed one, because it
/// is glued over: a panel lies on it that cannot be lifted off any more (parts/stiffness.h). In the flat net.
Region hidden(const Net& net, const Folded& folded, Side side);

/// The room of a pocket as it is filled, as printed, where its walls are not glued to each other: across its opening, the widest straight-sided thing that goes down half
/// its depth; and from its ground, where half that width is left, to the highest point of its mouth. 0 when it has none.
struct PocketRoom {
    Length width, depth;
};
PocketRoom room_of(const Net& net, const Folded& folded, const Pocket& pocket);

}  // namespace qw::parts
