// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "base/geometry.h"
#include "checks/proof_rules.h"
#include "checks/rules.h"
#include "report/proofing.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace qw::report {

/// Where things lie on a page, for what is drawn over its picture. Page lengths from the lower left corner, at printed
/// size; what is not known, or does not apply, is not there.
struct SheetGeometry {
    std::optional<Size> sheet;       ///< the page as it is held
    std::optional<Rect> trim;        ///< what is left when the sheet has been cut to the picture
    std::optional<Rect> safe;        ///< what must survive lies inside
    std::optional<Rect> printable;   ///< what the printer's margins leave
    std::optional<Rect> ink;         ///< smallest box round the rendered ink
    std::optional<Rect> artwork;     ///< the whole artwork, also what of it lies beyond the picture and the sheet
    std::optional<Rect> visible;     ///< what of it is printed
};

/// A file of artwork, or a page of one, that a page shows.
struct ShownFile {
    std::string file;             ///< relative to the kit
    int page = 0;                 ///< of a PDF, counted from 1; 0: a picture
    friend bool operator==(const ShownFile&, const ShownFile&) = default;
};

/// One page that buyers get, as the report's table lists it.
struct SheetRow {
    std::string file;             ///< path inside the bundle
    int page = 0;
    std::string set, paper, print;
    std::string stock;            ///< the paper that the set is meant for; empty: not known
    std::vector<ShownFile> artwork;  ///< in the order in which they are drawn
    SheetGeometry geometry;
    std::string size;             ///< "279.4 x 215.9 mm"
    std::string ppi;              ///< "300", empty where nothing has pixels
    std::string ink;              ///< "12 %", mean darkness of the artwork or of the rendered page
    std::string proven;           ///< "rendered" or "same picture stream"
    std::vector<std::byte> picture;  ///< JPEG of the rendered page, small; empty: there is none
    bool picture_is_artwork = false;  ///< the picture is the whole artwork in greys, not the page; it lies on geometry.artwork
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
    std::vector<checks::Rules::Untried> untried;

    std::vector<checks::SignedSheet> proofs;  ///< what was printed and signed, held against the kit
    std::optional<ProofingSet> proofing;  ///< the sheets to print, when that was asked for

    bool fit_for_sale() const;
};

std::string to_json(const AuditReport& report);
/// For a terminal: verdict, then each finding with its place and what to do.
std::string to_text(const AuditReport& report);
/// One self-contained page.
std::string to_html(const AuditReport& report);

}  // namespace qw::report
