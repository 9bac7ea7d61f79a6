// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/print_readings.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// What the print check is made for.
struct PrintCheck {
    Duplex turned = Duplex::flip_long_edge;  ///< as the kit's duplex sets are turned over; simplex: no back
    std::vector<double> percents;            ///< the print sizes whose gauge readings are told; as on the measurements sheet
};

/// The sheet that is printed first and measured: gauge and rulers for the printed size, nested frames for what the
/// printer leaves white, crosses for how the back falls on the front, a grey strip. Page 1 is the front; page 2, the
/// back, is turned over as `check.turned` says. Frames stand outside the room that every printer leaves, because how
/// much of them is printed is what they tell. Words: pipeline/texts/print-check.mustache.
Document print_check_sheet(const SheetContext& context, const PrintCheck& check);

}  // namespace qw::compose
