// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/lying.h"

#include <vector>

namespace qw::parts {

/// Which panels of the closed part are held against each other once it is glued, so that nobody can lift one off the
/// other: an equivalence, told by a number for each panel; equal numbers are held.
/// Every panel is lifted by a linear function of its place. At a fold two panels keep the height of their common line;
/// what is glued, or joined by an edge that is never folded, keeps all of its height. What these equations leave free
/// can be opened (small movements; that layers press on each other is left out).
std::vector<std::size_t> held_together(const Net& net, const Folded& folded, const Lying& closed);

}  // namespace qw::parts
