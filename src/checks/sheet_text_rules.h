// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/pdf_rules.h"
#include "compose/document.h"

#include <string>
#include <vector>

namespace qw::checks {

/// What can be read out of a rendered page of a generated sheet is what was planned for it: every figure, that is every run
/// of digits with what joins it, and every letter so many times, in whatever order they stand.
void check_sheet_text(const Rules& rules, const compose::Page& plan, const RenderedPage& seen, const std::string& path, Findings& findings);

/// Every page of a generated sheet says whose it is, so that a photographed sheet can be told: the kit with its version and
/// the sheet, as the file's own title and subject name them, and the paper. Asked of sheets of ours whose role is known.
void check_sheet_foot(const Rules& rules, const SeenPdf& seen, Findings& findings);

/// The list of materials can be read to give each of its cautions, once all its pages are rendered; other sheets are not asked.
void check_sheet_cautions(const Rules& rules, const SeenPdf& seen, Findings& findings);

}  // namespace qw::checks
