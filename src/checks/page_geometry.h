// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"

#include <cstdio>
#include <string>

namespace qw::checks {

/// Boxes of finished files are written with four to six decimals of a point.
inline constexpr Length box_slack = Length::points(0.02);

inline bool near(Length a, Length b) { return a - b <= box_slack && b - a <= box_slack; }

/// As the file has it: "0.00 0.00 612.00 792.00 pt".
inline std::string box_text(const Rect& r) {
    char text[128];
    std::snprintf(text, sizeof text, "%.2f %.2f %.2f %.2f pt", r.left.in_points(), r.bottom.in_points(), r.right.in_points(), r.top.in_points());
    return text;
}

}  // namespace qw::checks
