// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// Which rows of the measures a table holds: what is cut, pierced or bought, or what is only told (figures, bulk, creep).
enum class PieceRows { to_make, to_know };

/// The table that a buyer cuts from: a row for each thing, a column for each print at full size; the paper's own ruler
/// large, the other one below it. Prints that do not fit beside each other have a table each. A size whose checks fail
/// shows no number. Draws at the sheet's cursor, under `heading` and `introduction`, and moves it below; `continued` is the
/// title of a further page. Words: column-head, column-page.
void draw_piece_table(Sheet& sheet, const std::vector<SizeColumn>& columns, PieceRows rows, const std::string& heading,
                      const std::vector<std::string>& introduction, const RowTitles& titles, const texts::Passages& words, const std::string& continued);

/// Below the table that a buyer cuts from, why sizes fail, and what only accompanies them. Words: note-on-size.
void draw_reasons(Sheet& sheet, const std::vector<SizeColumn>& columns, const texts::Passages& words, const std::string& continued);

/// What keeps a size from being shown (errors), or only accompanies it: a sentence for each, none twice.
std::vector<std::string> reasons(const Findings& findings, bool errors);
/// The same with the rules' names.
struct Reason {
    std::string rule, sentence;
};
std::vector<Reason> reasons_by_rule(const Findings& findings, bool errors);

/// A remark below a table, on a further page when there is no room; and what it takes.
Length height_of_note(const Sheet& sheet, const std::string& words);
void note_below(Sheet& sheet, const std::string& words, const std::string& continued);

}  // namespace qw::compose
