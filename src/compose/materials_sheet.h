// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "materials/list.h"

namespace qw::compose {

/// What to buy and to lay ready, to be ticked off, and what to take care of. Amounts, uses and cautions are the list's
/// own sentences; the sheet adds headings only. Words: pipeline/texts/materials.mustache.
Document materials_sheet(const SheetContext& context, const materials::List& list);

}  // namespace qw::compose
