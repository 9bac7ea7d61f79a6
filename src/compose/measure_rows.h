// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"

#include <string>
#include <vector>

namespace qw::compose {

/// One size for which the journal was computed: a column of the measurements.
struct SizeColumn {
    std::string label;         ///< "95 %": what the buyer chose when printing
    double percent = 100;      ///< the same as a number
    Print print = Print::borderless;
    journal::Measures measures;
};

/// One thing to be measured, as the sheet says it. Lengths are set with real fractions.
struct MeasureRow {
    enum class Kind { page, piece, stations, length, item, figure } kind = Kind::piece;
    std::string name;          ///< of the piece, length, item or figure; "page-stations", "spine-stations", "page", "bulk", "creep"
    std::string count;         ///< "2 ×", empty where nothing is counted
    std::string title, use;
    std::string metric, us;
    const std::string& in(UnitSystem system) const { return system == UnitSystem::metric ? metric : us; }
    /// Without the unit at the end, for a column whose head tells it.
    std::string figures(UnitSystem system) const;
};

/// Titles of the rows that no template names.
struct RowTitles {
    std::string page, page_use, page_stations, spine_stations, stations_use;
    std::string grain_height{}, grain_width{};  ///< said of a piece that is cut and has a grain, behind its use
    std::string bulk{}, bulk_use{}, creep{}, creep_use{};
    std::string to{};                           ///< between the ends of an interval
};

/// Everything that a size says, in the order of the sheet: page, pieces, stations, lengths, items that have a size,
/// figures, bulk and creep. The page is shown to the nearest 0.5 mm and 1/16 in, bulk and creep to the nearest 0.1 mm and
/// 1/64 in; nothing else is rounded here, all comes as journal::Shown has it. A bulk that a figure tells already, and a
/// creep of nothing, have no row.
std::vector<MeasureRow> rows_of(const journal::Measures& measures, const RowTitles& titles);

/// "40 · 108 · 176 mm", from the head.
std::string stations_text(const std::vector<journal::Shown>& stations, UnitSystem system);

/// "Spine strip" → "spine strip", for the middle of a sentence.
std::string in_sentence(std::string title);

}  // namespace qw::compose
