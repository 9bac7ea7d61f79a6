// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <vector>

namespace qw::compose {

/// Measure your print: for every size what the gauge reads, and for each print the trimmed page and the print scale.
/// Prints that do not fit beside each other have a table each. A figure that a ruler cannot tell from the one above or
/// below is marked. Where a size cannot be made, its page is left out. Words: measure … of
/// pipeline/texts/measurements.mustache. `introduction` stands above; `page_title` is the title of a further page.
void draw_reading_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const std::vector<std::string>& introduction, const texts::Passages& words,
                        const std::string& page_title);

/// What the buyer's printer may have done, by what the gauge reads: every printer and paper of the pipeline's data
/// (print_readings.h). Words: cause … of the same file.
void draw_cause_table(Sheet& sheet, const texts::Passages& words, const std::string& page_title);

}  // namespace qw::compose
