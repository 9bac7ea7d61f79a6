// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/lying.h"

#include <vector>

namespace qw::parts {

/// Each tab lies next to the panel it is glued to and wholly on it when all is folded: part-tab-uncovered.
Findings check_tabs(const Net& net, const Lying& closed);

/// The layers of the closed part are those of the template: part-layers.
Findings check_layers(const Net& net, const Lying& closed);

/// Each face is upright and to be seen when and from where it says: part-face-turned, part-face-hidden. Faces of states
/// that a fold did not reach are left out.
Findings check_faces(const Net& net, const std::vector<Lying>& states);

}  // namespace qw::parts
