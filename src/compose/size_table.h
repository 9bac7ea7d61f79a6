// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// The sizes of one print below each other, on pages of their own: a row for each size, a column for each thing that
/// changes with it; a figure that is the same at all of them has none. Columns that do not fit beside each other go on in
/// further bands on the same page, so that a page holds all that is to be known of its sizes; where the paper is too
/// small for that, each band has its pages. Sizes whose checks fail are not shown but explained; neighbours that fail by
/// the same rules share a row. What only accompanies a size stands below.
/// On small paper the rows tell what the gauge reads as well, and need no table of readings before them.
/// Words: sizes-PRINT, size-head, size-scale, size-line, size-line-head, unit-metric, unit-us, note-on-size, reason-at, range.
void draw_size_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words);

/// Small paper, where the rows of sizes tell what the gauge reads.
bool rows_tell_the_line(const Paper& paper);
/// The sizes of each print that the paper's own ruler can tell apart on the gauge, from the first on, and 100 % in any
/// case. Nobody could find the others by measuring; between two rows a buyer adds to her own page.
std::vector<SizeColumn> told_apart(const std::vector<SizeColumn>& columns, const Paper& paper);

/// The print scale of a size: "0.945".
std::string scale_text(const SizeColumn& column);
/// Whether the sizes' per cents begin to follow each other in other steps just before this one.
bool steps_change(const std::vector<const SizeColumn*>& sizes, std::size_t at);

}  // namespace qw::compose
