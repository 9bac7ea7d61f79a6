// SPDX-License-Identifier: GPL-3.0-or-later
#include "places.h"

#include <algorithm>

#include "chance.h"
#include "waves.h"

namespace art {

Field hollin_sound() {
    return Field({{{20, 150}, 1.35, 38, 0.9},
                  {{0, 70}, 1.3, 42, 0.8},
                  {{70, 8}, 1.2, 26, 2.2},
                  {{180, 0}, 1.3, 30, 2.4},
                  {{86, 128}, 0.5, 7, 1.4},
                  {{300, 120}, 1.5, 44, 0.8},
                  {{230, 220}, 1.2, 28, 2.2},
                  {{22, 220}, 1.0, 30, 1.5}},
                 -0.78, 0.34, 12);
}

Field withy_haven() {
    return Field({{{30, 60}, 1.5, 44, 0.8},
                  {{20, 130}, 1.2, 34, 0.9},
                  {{140, 135}, 1.5, 36, 0.8},
                  {{90, 30}, 0.9, 22, 1.6},
                  {{130, 190}, 1.0, 30, 1.2},
                  {{64, 98}, 0.7, 8, 1.6}},
                 -0.72, 0.3, 77);
}

Field open_banks(unsigned seed) {
    Chance chance(seed);
    std::vector<Hill> hills;
    for (int i = 0; i < 17; ++i)
        hills.push_back({{chance.between(-10, 313), chance.between(-10, 232)},
                         chance.between(0.5, 1.4),
                         chance.between(10, 34),
                         chance.between(0.7, 1.8)});
    return Field(hills, -0.8, 0.42, seed);
}

void draw_coast_view(Pen& pen, const Box& b) {
    const double sea = b.bottom() - 3;
    const auto ridge = [&](double height, double phase, Colour fill, double from, double to) {
        Path p;
        for (double x = from; x <= to; x += 1.5) {
            const double k = (x - from) / (to - from), edge = std::sin(kPi * k);
            p.push_back(
                {b.x + x, sea - height * std::pow(edge, 0.8) *
                                    (0.72 + 0.2 * std::sin(x * 0.13 + phase) + 0.1 * std::sin(x * 0.41 + phase))});
        }
        p.push_back({b.x + to, sea});
        Path area = p;
        area.push_back({b.x + from, sea});
        pen.poly(area, true).fill(fill, true).stroke(kInk, 0.5);
        const Hold hold(pen);
        pen.poly(area, true).clip();
        // Shade on the slopes that face away from the light.
        for (std::size_t i = 1; i + 1 < p.size(); ++i) {
            const double fall = p[i].y - p[i - 1].y;
            if (fall < 0.05) continue;
            for (const double k : {0.0, 0.5}) {
                const Point s = p[i] + (p[i + 1] - p[i]) * k;
                const double drop = std::min(sea - s.y, 1.5 + fall * 9) * (k > 0 ? 0.65 : 1);
                pen.line(s, {s.x + drop * 0.45, s.y + drop}).stroke(kInk, 0.3);
            }
        }
    };
    ridge(b.h * 0.62, 0.4, kPaper, 8, 78);
    ridge(b.h * 0.8, 2.1, kGlassPale, 52, b.w - 6);
    ridge(b.h * 0.36, 4, kBuff, 22, 66);
    for (int i = 0; i < 3; ++i)
        pen.line({b.x + i * 6.0, sea + i * 1.3}, {b.right() - i * 6.0, sea + i * 1.3}).stroke(kInkMid, 0.5 - 0.1 * i);
}

}  // namespace art
