// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/guide_flow.h"
#include "compose/sheet.h"

#include <string>
#include <vector>

namespace qw::compose {

/// A file of the kit that is printed on both sides.
struct DuplexFile {
    std::string title;
    int pages = 0;                     ///< front, back, front, back
    Duplex turned = Duplex::flip_long_edge;
};

/// A sheet on its way into the printer, from above, as it is laid in again for its back: the arrow that was drawn on its
/// upper side before the front was printed lies below now (dotted), and points into the printer again where the sheet
/// turns over its long edge, away from it where it turns over its short edge. Simplex: the first time, arrow up.
void draw_sheet_going_in(Canvas& canvas, const Rect& into, Size paper, Duplex turned, const texts::Passages& words);

/// How both sides are printed on a printer that does not turn the sheet itself: one sheet for a test, which edge goes in
/// first and which side up, and which pages of each file follow each other. `turned` is how the print check itself is
/// turned over; `pin` is what the print check says of reading the offset with a pin, where its back has no room for it.
/// Words: pipeline/texts/print-check.mustache.
void reload_pages(Sheet& sheet, Duplex turned, const std::vector<DuplexFile>& files, const texts::Passages& words,
                  const std::vector<std::string>& pin);

/// "1, 3, 5 … 23", "2, 4, 6 … 24", "24, 22, 20 … 2": all of them up to four.
std::string page_numbers(int first, int last);

}  // namespace qw::compose
