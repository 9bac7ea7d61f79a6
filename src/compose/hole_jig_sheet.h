// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <optional>
#include <vector>

namespace qw::compose {

/// The sheet from which the hole jig of one edition is cut: a strip as long as the page is high at 100 % of this print,
/// with the unrounded holes of pages and spine, both read from the middle. Printed with the pages, it shrinks as their
/// holes do; the sheet names the sizes for which that is not so. Strips that are longer than the paper come in parts.
/// `full` is the edition at 100 %, `of_print` all sizes of the same print that the measurements sheet shows.
/// Nothing when the journal has no holes in its pages. Words: pipeline/texts/hole-jig.mustache.
std::optional<Document> hole_jig_sheet(const SheetContext& context, const SizeColumn& full, const std::vector<SizeColumn>& of_print);

/// True when a jig made for `full` and printed at `size` shows every hole of that size, from the middle, to 0.5 mm.
bool jig_holds(const journal::Measures& full, const journal::Measures& size);

}  // namespace qw::compose
