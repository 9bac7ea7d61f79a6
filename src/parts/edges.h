// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/net.h"

#include <optional>
#include <vector>

namespace qw::parts {

/// A piece of a panel's outline from one corner of the net to the next: corners of other panels that lie on an edge part it.
/// Corners nearer than `same_point` have become one.
struct EdgePiece {
    std::size_t panel = 0;
    Point from;
    Outline::Edge edge;                ///< its way from `from`, counter-clockwise round the panel
    std::optional<std::size_t> beyond; ///< the panel that has the same piece the other way round; nothing: a cut line
};

/// All pieces of all panels, in the panels' order and round each outline.
std::vector<EdgePiece> pieces_of(const std::vector<Panel>& panels);

/// A straight edge along which two panels are in one piece.
struct SharedEdge {
    std::size_t a = 0, b = 0;          ///< a < b
    Point from, to;
    bool straight = true;              ///< an arc cannot be folded along
};
std::vector<SharedEdge> shared_edges(const std::vector<Panel>& panels);

}  // namespace qw::parts
