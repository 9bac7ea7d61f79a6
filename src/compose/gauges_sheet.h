// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "journal/measures.h"

namespace qw::compose {

/// Gauges to cut out for the lengths that stay the same however large the pages are: an angle for turn-ins and the cut at
/// a corner, a card with a step for each short length, a strip for the rows of holes across the spine; and the line that
/// tells whether the sheet was printed at 100 %, as it always must be. Which lengths have a step, and their titles, is in
/// pipeline/texts/gauges.mustache; a length that the template does not have, or that shrinks with the pages, has none.
Document gauges_sheet(const SheetContext& context, const journal::Measures& measures);

}  // namespace qw::compose
