// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/part_lines.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What stands beside the parts of a sheet: which line is which, only those that are there, and what the sheet is.
struct PartLegend {
    bool valley = false, mountain = false, holes = false, glue = false;
    std::string sheet;                 ///< "Tidewater Almanac 1.0.0, pockets, sheet 1 of 3, A4, borderless"
};

/// In small type, in as few lines as there is room for, as low as `area` has room outside of `taken`; left out when there
/// is none. Returns whether it was drawn.
bool draw_part_legend(Canvas& canvas, const PartLegend& legend, const Rect& area, const std::vector<Rect>& taken, const kit::PartRules& rules,
                      const texts::Passages& words);

}  // namespace qw::compose
