// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/print_readings.h"
#include "compose/reload_drawing.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// What the print check is made for.
struct PrintCheck {
    Duplex turned = Duplex::flip_long_edge;  ///< as the kit's duplex sets are turned over; simplex: no back
    std::vector<double> percents;            ///< the print sizes whose gauge readings are told; as on the measurements sheet
    std::vector<DuplexFile> files = {};      ///< of this paper: their pages are told for printing by hand
};

/// The sheet that is printed first and measured: gauge and rulers for the printed size, nested frames for what the
/// printer leaves white, crosses for how the back falls on the front, a grey strip. Page 1 is the front; page 2, the
/// back, is turned over as `check.turned` says. Frames stand outside the room that every printer leaves, because how
/// much of them is printed is what they tell. Then, on a page of its own, how to print both sides on a printer that does
/// not turn the sheet. Words: pipeline/texts/print-check.mustache.
///
/// How far the back is off is read to 0.5 mm on both axes: against the light, the arms of one side on the other's marks;
/// on paper that lets no light through by a pin, pushed through a cross of the front, in the squares of 1 mm around the
/// back's cross.
Document print_check_sheet(const SheetContext& context, const PrintCheck& check);

}  // namespace qw::compose
