// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/palette_rules.h"

#include "checks/said_of_picture.h"

#include <algorithm>
#include <cstdio>
#include <limits>

namespace qw::checks {

namespace {

constexpr std::size_t least_pictures = 4;

std::string in_hex(const artwork::Swatch& swatch) {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", swatch.red, swatch.green, swatch.blue);
    return text;
}

double nearest_elsewhere(const artwork::Swatch& swatch, std::size_t own, const std::vector<PaletteSeen>& all) {
    const artwork::Lab lab = swatch.lab();
    double nearest = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i == own) continue;
        for (const artwork::Swatch& other : all[i].palette) nearest = std::min(nearest, artwork::ciede2000(lab, other.lab()));
    }
    return nearest;
}

}  // namespace

void check_palettes(const Rules& rules, const std::vector<PaletteSeen>& all, Findings& findings) {
    const char* rule = "palette-outlier";
    const auto coloured = std::count_if(all.begin(), all.end(), [](const PaletteSeen& one) { return !one.palette.empty(); });
    if (static_cast<std::size_t>(coloured) < least_pictures) return;
    const double far = rules.with(rule, "far"), limit = rules.limit(rule);
    for (std::size_t i = 0; i < all.size(); ++i) {
        rules.tried(rule);
        double share = 0, farthest = 0;
        const artwork::Swatch* stranger = nullptr;
        for (const artwork::Swatch& swatch : all[i].palette) {
            const double distance = nearest_elsewhere(swatch, i, all);
            if (distance <= far) continue;
            share += swatch.share;
            if (distance <= farthest) continue;
            farthest = distance;
            stranger = &swatch;
        }
        if (share * 100 <= limit) continue;
        rules.say(findings, of_picture(rule, all[i].shown, 0,
                                       in_digits(share * 100) + " % of its colour; " + in_hex(*stranger) + " is " + in_digits(farthest) + " away",
                                       in_digits(limit, "%g") + " % farther than " + in_digits(far, "%g") + " (CIEDE2000)",
                                       "Its colours are found nowhere else in the kit",
                                       "Look at it beside the others: colours of an earlier kit, another profile, or meant so"));
    }
}

}  // namespace qw::checks
