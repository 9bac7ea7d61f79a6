// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "journal/measures.h"

#include <string>
#include <vector>

namespace qw::test {

extern const std::vector<std::string> all_pictures;

/// A small journal for each picture, made up for the drawings: pieces, holes and sewing that such a cover has.
kit::JournalTemplate drawn_journal(const std::string& picture);
/// Sewn with this path through so many stations, evenly spread, in rows of which each has its own holes.
kit::JournalTemplate sewn_journal(int stations, std::vector<int> path, int signatures, int rows, bool goes_on);

/// The journal at a print size of a borderless edition.
journal::Measures drawn_measures(const kit::JournalTemplate& journal, const Paper& paper, double percent);

/// The words of the sheets and nothing else but the awl's and the knife's cautions.
const kit::Pipeline& words_only();

}  // namespace qw::test
