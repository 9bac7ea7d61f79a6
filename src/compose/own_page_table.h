// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/own_page.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// For a page between two rows of the size tables: what has to be added to her own page's width and height, in both
/// unit systems, and which way to round. Prints whose rows read the same share a table. What does not follow from the
/// page refers to the next row. Nothing is drawn when nothing follows from the page. Words: the passages own-page …
/// of pipeline/texts/measurements.mustache.
void draw_own_page_tables(Sheet& sheet, const std::vector<SizeColumn>& columns, const texts::Passages& words);

}  // namespace qw::compose
