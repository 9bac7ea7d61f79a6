// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// The sizes of one print below each other: a row for each size, a column for each thing that changes with it. Columns
/// that do not fit beside each other go on in a further band, and on a further page. Sizes whose checks fail are not
/// shown but explained; neighbours with the same reason share a row. What only accompanies a size stands below.
/// Words: size-head, size-scale, unit-metric, unit-us, note-on-size, range. `continued` is the title of a further page.
void draw_size_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words,
                     const std::string& continued);

}  // namespace qw::compose
