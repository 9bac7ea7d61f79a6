// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "journal/measures.h"

#include <vector>

namespace qw::compose {

/// The lengths that the maker sets out by: those that do not shrink with the pages and that the text of a step names
/// as {{name}}. In the template's order.
std::vector<const kit::NamedLength*> setting_out(const kit::JournalTemplate& journal);

/// These lengths in both unit systems, the paper's own large: "Stay the same at every size". Draws nothing when there are
/// none. Words: setting-out-heading of pipeline/texts/measurements.mustache.
void draw_setting_out(Sheet& sheet, const journal::Measures& measures, const texts::Passages& words);

/// Where the journal does otherwise than published rules: every length and number of the template that has a
/// `published` text, with its value, its reason and what the rules say. Draws nothing when there is none. Words:
/// otherwise … of the same file.
void draw_departures(Sheet& sheet, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
