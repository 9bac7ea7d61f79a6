// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// The table that a buyer cuts from: a row for each thing, a column for each print at full size; the paper's own ruler
/// large, the other one below it. A size whose checks fail shows no number; its reason stands under the table.
/// `how_to` stands beside the columns' heads. Words: column-head, column-page, note-on-size. Draws at the sheet's cursor and moves it below.
void draw_piece_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words,
                      const std::string& how_to);

/// The sentences of the findings that keep a size from being shown (errors), or that only accompany it.
std::vector<std::string> reasons(const Findings& findings, bool errors);

}  // namespace qw::compose
