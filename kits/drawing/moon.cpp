// SPDX-License-Identifier: GPL-3.0-or-later
#include "moon.h"

#include <algorithm>

namespace art {

void draw_moon(Pen& pen, Point c, double r, double age, Colour ink, Colour lit) {
    pen.circle(c, r).fill(lit);
    const double edge = std::cos(2 * kPi * age);  // where the shadow ends, in radii
    const double gap = std::max(0.42, r / 20);
    for (double y = -r + gap / 2; y < r; y += gap) {
        const double half = std::sqrt(std::max(0.0, r * r - y * y));
        const double from = age < 0.5 ? -half : -edge * half;
        const double to = age < 0.5 ? edge * half : half;
        if (to - from > 0.05)
            pen.line({c.x + from, c.y + y}, {c.x + to, c.y + y}).stroke(ink, std::max(0.35, gap * 1.25));
    }
    pen.circle(c, r).stroke(ink, r > 5 ? 0.6 : 0.4);
}

}  // namespace art
