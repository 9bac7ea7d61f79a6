// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "materials/list.h"

namespace qw::compose {

/// What to buy and to lay ready, to be ticked off, what may be left out or bought instead, and what to take care of.
/// Amounts, uses and cautions are the list's own sentences; the sheet adds the words around them. Words: pipeline/texts/materials.mustache.
Document materials_sheet(const SheetContext& context, const materials::List& list);

}  // namespace qw::compose
