// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/piece_table.h"
#include "texts/passages.h"

#include <string>
#include <vector>

namespace qw::compose {

/// Sizes that are shown in one row: one, or neighbours that fail by the same rules. Sizes are indices of columns.
struct SizeRow {
    std::vector<std::size_t> sizes;
    std::vector<Reason> why_not;       ///< of the first of them; empty: the size is shown
    bool in_other_figures = false;     ///< the others fail by other figures
};

/// The rows of one print's columns, in their order.
std::vector<SizeRow> size_rows(const std::vector<SizeColumn>& columns);

/// What accompanies the sizes that are shown: for each rule a sentence, with the sizes that it holds for. Words:
/// note-on-size, reason-at, range.
std::vector<std::string> size_notes(const std::vector<SizeColumn>& columns, const std::vector<SizeRow>& rows, const texts::Passages& words);

/// A reason as it is at one size; that other sizes have other figures is said beside it. Words: reason-at.
std::string reason_at(const texts::Passages& words, const Reason& reason, bool others_differ, const std::string& size);

/// "103 to 101 %": the unit, where both have one, stands once. Words: range.
std::string size_range(const texts::Passages& words, const std::string& from, const std::string& to);

}  // namespace qw::compose
