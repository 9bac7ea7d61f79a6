// SPDX-License-Identifier: GPL-3.0-or-later
#include "tower.h"

#include <algorithm>

#include "chance.h"

namespace art {
namespace {

// Half the width at a height; the shaft sweeps out a little towards the foot.
double half_at(const Tower& t, double h) {
    const double k = std::clamp(h / t.height, 0.0, 1.0);
    const double taper = t.base + (t.top - t.base) * k;
    return taper / 2 + t.base * 0.10 * std::pow(1 - k, 4);
}

void shaft(Pen& pen, const Tower& t, double from, double to) {
    Path outline;
    for (int i = 0; i <= 20; ++i) {
        const double h = from + (to - from) * i / 20;
        outline.push_back({-half_at(t, h), -h});
    }
    for (int i = 20; i >= 0; --i) {
        const double h = from + (to - from) * i / 20;
        outline.push_back({half_at(t, h), -h});
    }
    pen.poly(outline, true);
}

void daymark(Pen& pen, const Tower& t) {
    if (t.daymark == Daymark::bands)
        for (int i = 0; i < t.bands; ++i) {
            const double step = t.height / (2 * t.bands + 1);
            shaft(pen, t, step * (2 * i + 1), step * (2 * i + 2));
            pen.fill(t.mark);
        }
    if (t.daymark == Daymark::upper_half) {
        shaft(pen, t, t.height * 0.52, t.height);
        pen.fill(t.mark);
    }
    if (t.daymark == Daymark::spiral) {
        const Hold hold(pen);
        shaft(pen, t, 0, t.height);
        pen.clip();
        const double rise = t.height / 3.5;
        for (double h = -rise; h < t.height + rise; h += rise)
            pen.smooth({{-t.base, -h},
                        {0, -h - rise * 0.28},
                        {t.base, -h - rise * 0.36},
                        {t.base, -h - rise * 0.86},
                        {0, -h - rise * 0.78},
                        {-t.base, -h - rise * 0.5}},
                       true)
                .fill(t.mark);
    }
}

// Engraved shade: level strokes that grow from the right edge.
void shade(Pen& pen, const Tower& t) {
    for (double h = 0.6; h < t.height; h += 0.85) {
        const double w = half_at(t, h);
        const double reach = w * (0.62 + 0.16 * std::sin(h * 2.7));
        pen.line({w, -h}, {w - reach, -h}).stroke(mix(t.ink, t.wall, 0.25), 0.28);
    }
}

void openings(Pen& pen, const Tower& t) {
    for (int i = 0; i < t.windows; ++i) {
        const double h = t.height * (0.3 + 0.56 * i / std::max(1, t.windows - 1));
        const double w = t.top * 0.11;
        const Box b{-w / 2 - t.top * (i % 2 ? 0.12 : -0.0), -h - w * 2.2, w, w * 2.2};
        pen.box(b.inset(-0.35), w * 0.6).fill(t.wall);
        pen.box(b, w * 0.48).fill(t.ink);
    }
    const double d = t.base * 0.2;
    pen.move({-d / 2, 0}).to({-d / 2, -d * 1.3}).curve({-d / 2, -d * 2}, {d / 2, -d * 2}, {d / 2, -d * 1.3});
    pen.to({d / 2, 0}).close().fill(t.ink);
}

void gallery(Pen& pen, const Tower& t) {
    const double w = t.top * 0.5, y = -t.height;
    pen.poly({{-w, y}, {-w * 1.35, y - w * 0.3}, {w * 1.35, y - w * 0.3}, {w, y}}, true).fill(t.ink);
    pen.box({-w * 1.45, y - w * 0.45, w * 2.9, w * 0.16}).fill(t.ink);
    for (int i = 0; i <= 10; ++i) {
        const double x = -w * 1.4 + w * 2.8 * i / 10;
        pen.line({x, y - w * 0.45}, {x, y - w * 0.95}).stroke(t.ink, 0.3);
    }
    for (const double k : {0.7, 0.95}) pen.line({-w * 1.4, y - w * k}, {w * 1.4, y - w * k}).stroke(t.ink, 0.4);
}

void lantern(Pen& pen, const Tower& t) {
    const double w = t.top * 0.5, y = -t.height - w * 0.45, h = w * 1.7, half = w * 0.72;
    const Box glass{-half, y - h, half * 2, h};
    pen.box(glass).fill(t.lamp);
    pen.ellipse({0, y - h * 0.55}, half * 0.34, h * 0.28).fill(kWhite);
    pen.ellipse({0, y - h * 0.55}, half * 0.34, h * 0.28).stroke(t.ink, 0.3);
    for (int i = 0; i < 4; ++i) {
        const double x = -half + half * 2 * i / 4, step = half / 2;
        pen.line({x, y}, {x + step, y - h / 2}).line({x + step, y}, {x, y - h / 2});
        pen.line({x, y - h / 2}, {x + step, y - h}).line({x + step, y - h / 2}, {x, y - h});
    }
    pen.stroke(mix(t.ink, t.lamp, 0.2), 0.28);
    pen.box(glass).stroke(t.ink, 0.6);
    const double roof = y - h;
    pen.move({-half * 1.2, roof})
        .curve({-half * 1.1, roof - w * 0.6}, {-half * 0.5, roof - w * 0.85}, {0, roof - w * 0.9});
    pen.curve({half * 0.5, roof - w * 0.85}, {half * 1.1, roof - w * 0.6}, {half * 1.2, roof})
        .close()
        .fill(t.mark, true);
    pen.stroke(t.ink, 0.5);
    pen.circle({0, roof - w * 1.0}, w * 0.16).fill(t.ink);
    pen.line({0, roof - w}, {0, roof - w * 1.75}).stroke(t.ink, 0.5);
    pen.poly({{0, roof - w * 1.7}, {w * 0.5, roof - w * 1.55}, {0, roof - w * 1.4}}, true).fill(t.ink);
}

void house(Pen& pen, const Tower& t) {
    const double x = t.base * 0.52, w = t.base * 1.35, h = t.base * 0.5;
    pen.box({x, -h, w, h}).fill(t.wall);
    for (double y = 0.5; y < h; y += 0.85)
        pen.line({x + w, -y}, {x + w * (0.78 + 0.05 * std::sin(y * 3)), -y}).stroke(mix(t.ink, t.wall, 0.25), 0.28);
    pen.box({x, -h, w, h}).stroke(t.ink, 0.5);
    pen.box({x + w * 0.72, -h - t.base * 0.52, t.base * 0.16, t.base * 0.4}).fill(t.wall, true);
    pen.stroke(t.ink, 0.45);
    pen.poly({{x - 0.8, -h}, {x + w * 0.1, -h - t.base * 0.34}, {x + w * 0.92, -h - t.base * 0.34}, {x + w + 0.8, -h}},
             true)
        .fill(t.mark, true)
        .stroke(t.ink, 0.45);
    for (const double k : {0.22, 0.5, 0.76}) {
        const Box b{x + w * k - t.base * 0.05, -h * 0.72, t.base * 0.11, h * 0.36};
        pen.box(b).fill(t.ink);
    }
}

void lattice(Pen& pen, const Tower& t) {
    const int bays = 6;
    for (int i = 0; i < bays; ++i) {
        const double a = t.height * i / bays, b = t.height * (i + 1) / bays;
        pen.line({-half_at(t, a), -a}, {half_at(t, b), -b}).line({half_at(t, a), -a}, {-half_at(t, b), -b});
        pen.line({-half_at(t, b), -b}, {half_at(t, b), -b});
    }
    pen.stroke(t.ink, 0.45);
    pen.box({-t.top * 0.14, -t.height, t.top * 0.28, t.height}).fill(t.wall, true).stroke(t.ink, 0.4);
    for (const double side : {-1.0, 1.0}) {
        Path leg;
        for (int i = 0; i <= 20; ++i) leg.push_back({side * half_at(t, t.height * i / 20), -t.height * i / 20});
        pen.poly(leg, false).stroke(t.ink, 0.9);
    }
}

}  // namespace

double lamp_height(const Tower& t) { return t.height + t.top * 0.5 * 1.4; }

void draw_tower(Pen& pen, Point foot, const Tower& t) {
    const Hold hold(pen);
    pen.shift(foot);
    if (t.house) house(pen, t);
    if (t.daymark == Daymark::lattice) {
        lattice(pen, t);
    } else {
        shaft(pen, t, 0, t.height);
        pen.fill(t.wall);
        daymark(pen, t);
        shade(pen, t);
        shaft(pen, t, 0, t.height);
        pen.stroke(t.ink, 0.6);
        openings(pen, t);
    }
    gallery(pen, t);
    lantern(pen, t);
}

void draw_beams(Pen& pen, Point lamp, double reach, Colour colour, double points) {
    for (const double side : {90.0, 270.0})
        for (int i = -6; i <= 6; ++i) {
            const double angle = side + i * 1.9;
            const double far = reach * (i % 2 == 0 ? 1 : 0.82);
            pen.line(bearing(lamp, angle, std::min(7.0, reach * 0.3)), bearing(lamp, angle, far))
                .stroke(colour, points);
        }
}

void draw_rock(Pen& pen, Point top, double width, double height, Colour fill, Colour ink, unsigned seed) {
    Chance chance(seed);
    const Hold hold(pen);
    Path outline;
    const int n = 18;
    for (int i = 0; i <= n; ++i) {
        const double k = 2.0 * i / n - 1, edge = std::pow(std::abs(k), 3.2);
        const double flat = std::abs(k) < 0.45 ? 0 : chance.between(-0.05, 0.05);
        outline.push_back({top.x + k * width / 2, top.y + height * (edge + flat)});
    }
    outline.push_back({top.x + width / 2, top.y + height * 1.3});
    outline.push_back({top.x - width / 2, top.y + height * 1.3});
    pen.poly(outline, true).fill(fill, true).stroke(ink, 0.6);
    pen.poly(outline, true).clip();
    // Strokes fall away from the summit on both sides; the side away from the light is closer.
    for (double k = -0.96; k < 1; k += (k < 0.1 ? 3.4 : 1.9) / width * 2) {
        const double start = std::pow(std::abs(k), 3.2) + chance.between(0.04, 0.14);
        const double reach = chance.between(0.25, k < 0.1 ? 0.55 : 0.95), lean = k * width * 0.09;
        const Point p{top.x + k * width / 2, top.y + height * start};
        const Point q{p.x + lean * reach, p.y + height * reach};
        pen.line(p, q).stroke(ink, k < 0.1 ? 0.3 : 0.42);
        pen.line({q.x + 0.9, q.y - height * 0.1}, {q.x + 0.9 + lean * 0.3, q.y + height * 0.18}).stroke(ink, 0.25);
    }
}

}  // namespace art
