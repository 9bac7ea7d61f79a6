// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/misprint_rules.h"

#include "base/unit_system.h"

#include <cstdio>

namespace qw::checks {

namespace {

std::string percent(double share) {
    char text[32];
    std::snprintf(text, sizeof text, share < 0.0095 ? "%.1f %%" : "%.0f %%", share * 100);
    return text;
}

}  // namespace

proof::Misprint misprint_in_force(const Rules& rules) {
    return {Length::mm(rules.limit("misprint-safe-area")), Length::mm(rules.limit("misprint-shift"))};
}

void check_safe_area_of(const Rules& rules, const kit::Set& set, double scale, const std::string& where, Findings& findings) {
    rules.tried("misprint-safe-area");
    const proof::Misprint misprint = misprint_in_force(rules);
    const Length safe = set.safe_area * scale;
    if (safe >= misprint.farthest()) return;
    rules.say(findings,
              {"misprint-safe-area", Level::warning, "kit.yaml", 0, set.mark.line, show_metric(safe),
               show_metric(misprint.enlarged) + " + " + show_metric(misprint.shifted) + " = " + show_metric(misprint.farthest()),
               "What set " + set.name +
                   " keeps inside its safe area leaves the sheet when a borderless driver enlarges it and the sheet lies aside (" + where + ")",
               "Keep what matters " + show_metric(misprint.farthest()) + " from the edge or further, and write that as safe-area"});
}

void check_misprinted(const Rules& rules, const proof::Misprinted& seen, const std::string& path, int page, Findings& findings) {
    rules.tried("misprint-shift");
    if (seen.lost_safe <= 0) return;
    rules.say(findings, {"misprint-shift", Level::note, path, page, 0,
                         percent(seen.lost_safe) + " of the safe area's ink, up to " + show_metric(seen.deepest) + " from the edge", "none",
                         "Ink of the safe area leaves the sheet when the page is enlarged and lies aside; the picture shows the worst corner",
                         "Nothing to do if only a background runs off; else keep what matters further from the edge"});
}

}  // namespace qw::checks
