// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/palette.h"
#include "checks/rules.h"

#include <string>
#include <vector>

namespace qw::checks {

/// Main colours that are told of a page.
inline constexpr std::size_t most_swatches = 6;

/// A picture of a kit and its main colours.
struct PaletteSeen {
    std::string shown;                       ///< how the designer knows the file
    std::vector<artwork::Swatch> palette;
};

/// Pictures of one kit belong together: one is told when most of its colour is far (CIEDE2000) from every main colour of all the
/// others. Two that stray together are not told. Blank ones count nowhere; fewer than four tell nothing.
void check_palettes(const Rules& rules, const std::vector<PaletteSeen>& all, Findings& findings);

}  // namespace qw::checks
