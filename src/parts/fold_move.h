// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/edges.h"
#include "parts/lying.h"
#include "parts/plane.h"

#include <string>
#include <vector>

namespace qw::parts {

/// One edge that a fold bends, as it lies before and after: on the fold's line.
struct Hinge {
    std::size_t edge = 0;              ///< index into the net's shared edges
    std::size_t moves = 0, stays = 0;  ///< panels
    Vec from, to;
};

/// The line that panels turn round. They lie on its left, most of them, before the fold.
struct FoldLine {
    Vec through, along;                ///< `along` is a unit vector
    std::vector<Hinge> hinges;
};

/// Why a fold cannot be made.
struct FoldRefusal {
    std::string rule, message, mend;
};

/// The line of a fold in a state, or why it has none (part-tears).
struct FoundLine {
    FoldLine line;
    std::vector<FoldRefusal> refusals;
};
FoundLine line_of(const Net& net, const std::vector<SharedEdge>& edges, const Lying& lying, std::size_t fold);

/// Turns the fold's panels round its line. Half a turn toward the viewer begins by lifting what lies on the line's left:
/// nothing that stays may lie on it there, nor under what moves on the other side. What moves comes to lie above all
/// that stays on the right and below it on the left; behind, the same the other way round.
struct FoldMove {
    Lying after;
    std::vector<FoldRefusal> refusals;
};
FoldMove moved_over(const Net& net, const Lying& before, const FoldLine& line, std::size_t fold);

}  // namespace qw::parts
