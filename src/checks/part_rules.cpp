// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/part_rules.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::checks {

namespace {

/// Less than a cut or a printer can show.
constexpr Length unseen = Length::mm(0.05);

std::string rounded(double value) {
    char text[48];
    std::snprintf(text, sizeof text, "%.0f", value);
    return text;
}

Length most(const compose::Sides& sides) { return max(max(sides.left, sides.right), max(sides.bottom, sides.top)); }

void check_pixels(const Rules& rules, const compose::PartPicture& picture, const std::string& where, const std::string& shown, Findings& findings) {
    if (picture.ppi_x <= 0) return;
    const double ppi = std::min(picture.ppi_x, picture.ppi_y);
    for (const char* rule : {"artwork-ppi-low", "artwork-ppi"}) {
        rules.tried(rule);
        if (ppi + 0.1 >= rules.limit(rule)) continue;
        rules.say(findings, {rule, Level::error, shown, 0, 0, rounded(ppi) + " ppi", rounded(rules.limit(rule)) + " ppi",
                             "It has too few pixels for its printed size" + where, "Export it at 300 ppi of its drawn size"});
        return;
    }
}

}  // namespace

void check_part_picture(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::PartPicture& picture,
                        const std::string& shown, Findings& findings) {
    const std::string where = " on a part of set " + set.name + ", " + edition.paper.title + ", " + name_of(edition.print);
    check_pixels(rules, picture, where, shown, findings);
    rules.tried("part-art-covers");
    if (const Length white = most(picture.white); white > unseen && set.place != kit::Place::contain) {
        rules.say(findings, {"part-art-covers", Level::error, shown, 0, 0, show_metric(white) + " of panel or bleed stays white", "0 mm",
                             "The picture does not cover its panels and their bleed" + where, "Draw it larger, or let the set say place: cover"});
    }
    rules.tried("part-art-shape");
    const Length cut = most(picture.lost), allowed = Length::mm(rules.limit("part-art-shape")) * picture.scale;
    if (cut > allowed + unseen) {
        rules.say(findings, {"part-art-shape", Level::error, shown, 0, 0, show_metric(cut) + " cut away beyond the bleed", show_metric(allowed),
                             "The picture has another shape than the panels that it covers" + where, "Draw it to the size of the panels and their bleed"});
    }
    rules.tried("part-safe-area");
    const Length promised = set.safe_area * picture.scale, taken = Length::mm(rules.limit("part-safe-area"));
    if (promised + unseen < taken) {
        rules.say(findings, {"part-safe-area", Level::error, shown, 0, 0, show_metric(promised), show_metric(taken),
                             "A cut or a fold that is off by what scissors are off comes nearer to what matters than the safe area leaves" + where,
                             "Keep what matters further from the edge and write the larger safe-area"});
    }
}

void check_part_fits(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::PartDocument& document, double scale, Findings& findings) {
    rules.tried("part-fits-paper");
    if (!document.lack) return;
    const parts::Lack& lack = *document.lack;
    std::string missing;
    if (lack.width > Length()) missing = show(lack.width, edition.paper.ruler) + " of width";
    if (lack.height > Length()) missing += (missing.empty() ? "" : " and ") + show(lack.height, edition.paper.ruler) + " of height";
    const double percent = std::floor(lack.largest_scale * scale * 100 + 1e-9);
    rules.say(findings, {"part-fits-paper", Level::error, "kit.yaml", 0, set.mark.line, missing + " missing", edition.paper.title + ", " + name_of(edition.print),
                         "A part of set " + set.name + " does not fit the printable area of " + edition.paper.title + ", " + name_of(edition.print),
                         "Print it at " + rounded(percent) + " % of its drawn size or smaller (this edition prints at " + rounded(scale * 100) +
                             " %), or make the template smaller"});
}

}  // namespace qw::checks
