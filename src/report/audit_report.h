// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "base/geometry.h"
#include "checks/rules.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace qw::report {

/// One page that buyers get, as the report's table lists it and its pictures show it. Areas are in the page's own lengths from
/// its lower left corner; what is not known is nothing.
struct SheetRow {
    std::string file;             ///< path inside the bundle
    int page = 0;
    std::string set, paper, print;
    std::string size;             ///< "279.4 x 215.9 mm"
    std::string ppi;              ///< "300", empty where nothing has pixels
    std::string ink;              ///< "12 %", mean darkness of the artwork or of the rendered page
    std::string proven;           ///< "rendering", "picture bytes and place"
    std::string artwork;          ///< the designer's file that it shows, as findings name it; empty: none, or several
    std::string stock;            ///< "copy paper, 100 g/m²"; empty: not known
    std::vector<std::byte> picture;  ///< JPEG of the rendered page, small; empty: not rendered
    std::vector<std::byte> misprint;  ///< the same of the sheet as a misprint leaves it; empty: it loses nothing that matters
    Size sheet;                   ///< the page as it is held; zero: not known
    std::optional<Rect> trim;     ///< where it is cut, or the bordered picture
    std::optional<Rect> safe;     ///< inside it lies what must survive
    std::optional<Rect> printable;  ///< what the printer's margins leave
    std::optional<Rect> inked;    ///< the smallest box around all ink of the rendered page
    std::optional<Rect> drawn;    ///< the whole artwork; what of it exceeds the trim is lost
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
