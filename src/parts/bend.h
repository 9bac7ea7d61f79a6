// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/fold_move.h"

namespace qw::parts {

/// What the paper of a fold takes of each of its sides when it goes round so many layers: half of a half circle at the
/// middle of the paper, π/4 · (layers + 1) · caliper (geometry).
Length taken_by_bend(int layers, Length caliper);

/// A corner that is no wider along the fold than this where the bend begins is bent with it, and bars nothing. Our own
/// figure, for slanted flaps and tabs that begin at the end of a fold.
inline constexpr Length corner_that_gives_way = Length::mm(2);

/// Held against each edge that a fold closes: what comes to lie between its two panels, and is not itself bent there, has
/// to end before the bend of as many layers as lie there over each other. part-inner-panel, the worst one of the fold.
Findings check_bend(const Net& net, const Lying& after, const FoldLine& line, std::size_t fold);

}  // namespace qw::parts
