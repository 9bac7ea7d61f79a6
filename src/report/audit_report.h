// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "checks/rules.h"

#include <cstddef>
#include <string>
#include <vector>

namespace qw::report {

/// One page that buyers get, as the report's table lists it.
struct SheetRow {
    std::string file;             ///< path inside the bundle
    int page = 0;
    std::string set, paper, print;
    std::string size;             ///< "279.4 x 215.9 mm"
    std::string ppi;              ///< "300", empty where nothing has pixels
    std::string ink;              ///< "12 %", mean darkness of the artwork or of the rendered page
    std::string proven;           ///< "rendered" or "same picture stream"
    std::vector<std::byte> picture;  ///< JPEG of the rendered page, small; empty: not rendered
    std::vector<std::byte> misprint;  ///< the same of the sheet as a misprint leaves it; empty: it loses nothing that matters
};

/// All that one audit has to say. No times, no absolute paths: the same subject gives the same report.
struct AuditReport {
    std::string subject;          ///< "tidewater-almanac 1.0.0", or the name of what was audited
    std::string title;            ///< the kit's title, empty when unknown
    Findings findings;
    bool strict = false;          ///< warnings count
    std::vector<SheetRow> sheets;
    std::vector<checks::Rules::Tried> tried;

    bool fit_for_sale() const;
};

std::string to_json(const AuditReport& report);
/// For a terminal: verdict, then each finding with its place and what to do.
std::string to_text(const AuditReport& report);
/// One self-contained page.
std::string to_html(const AuditReport& report);

}  // namespace qw::report
