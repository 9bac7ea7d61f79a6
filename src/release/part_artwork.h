// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/part_sheets.h"
#include "release/look.h"

#include <vector>

namespace qw::release {

/// Which picture each part of a set shows on each face: one picture serves all parts, and parts beyond a face's pictures
/// get what `last-back` says. Each part stands there as often as it is printed.
compose::PartArtwork part_artwork(const LookedSet& set, std::vector<compose::Face> faces);

}  // namespace qw::release
