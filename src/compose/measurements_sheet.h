// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// The sheet that boards and papers are cut from. Page 1: the pieces at 100 % of each print, and a dimensioned drawing
/// of the opened cover. Then, for each print, every size in `columns` as a row. All numbers come from the measures.
/// `columns` are in the order in which they are shown and hold, for each print of the kit, one of 100 %; all are for
/// the context's paper and one template. Words: pipeline/texts/measurements.mustache.
Document measurements_sheet(const SheetContext& context, const std::vector<SizeColumn>& columns);

}  // namespace qw::compose
