// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// The printable step by step: what is made, then the steps of the journal's template with this kit's numbers beside
/// them in both unit systems, tools, drawings, and every caution where it applies first. `full` holds a column of 100 %
/// for each print of the kit, in the order in which they are shown; not empty, all for the context's paper and one
/// template. A print whose checks fail has no figures; the reason stands at the beginning.
/// A step stands on one page with its numbers and its drawing, unless it is longer than a page; a drawing for which the
/// paper has no room is left out, and the step says so. Words: pipeline/texts/guide.mustache; titles of rows as on the measurements sheet.
/// Throws Fault (not_understood) with everything that the steps name and the journal or the pipeline does not have.
Document guide_sheet(const SheetContext& context, const std::vector<SizeColumn>& full);

}  // namespace qw::compose
