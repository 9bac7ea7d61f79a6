// SPDX-License-Identifier: GPL-3.0-or-later
#include "ornaments.h"

#include "leaf.h"

namespace art {

void draw_boat(Pen& pen, Point at, double s, Colour sail, Colour ink) {
    const auto p = [&](double x, double y) { return Point{at.x + x * s, at.y + y * s}; };
    pen.line(p(0, 0), p(0, -1.75)).stroke(ink, 0.7);
    pen.move(p(0.06, -1.7)).curve(p(0.5, -1.2), p(0.72, -0.6), p(0.8, -0.22)).to(p(0.06, -0.22)).close();
    pen.fill(sail, true).stroke(ink, 0.45);
    pen.move(p(-0.06, -1.5)).curve(p(-0.2, -1.0), p(-0.4, -0.5), p(-0.62, -0.22)).to(p(-0.06, -0.22)).close();
    pen.fill(kPaper, true).stroke(ink, 0.45);
    for (int i = 1; i < 6; ++i) {
        const double y = -0.22 - 0.24 * i;
        pen.line(p(0.06, y), p(0.06 + 0.1 * (6 - i), y)).stroke(ink, 0.25);
    }
    pen.move(p(-0.95, -0.14)).curve(p(-0.8, 0.1), p(-0.6, 0.18), p(-0.4, 0.2)).to(p(0.55, 0.2));
    pen.curve(p(0.8, 0.15), p(0.95, 0.0), p(1.02, -0.18)).close().fill(ink);
    pen.poly({p(0, -1.75), p(-0.34, -1.66), p(0, -1.58)}, true).fill(kBrick);
}

void draw_gull(Pen& pen, Point at, double span, Colour ink, double tilt) {
    const Hold hold(pen);
    pen.shift(at).turn(tilt);
    const double w = span / 2;
    pen.move({-w, -w * 0.18}).curve({-w * 0.7, -w * 0.55}, {-w * 0.25, -w * 0.4}, {0, 0});
    pen.curve({w * 0.25, -w * 0.4}, {w * 0.7, -w * 0.55}, {w, -w * 0.18});
    pen.curve({w * 0.66, -w * 0.42}, {w * 0.3, -w * 0.2}, {0, w * 0.16});
    pen.curve({-w * 0.3, -w * 0.2}, {-w * 0.66, -w * 0.42}, {-w, -w * 0.18}).close().fill(ink);
}

void draw_star(Pen& pen, Point at, double r, Colour fill, int points, double waist) {
    Path rim;
    for (int i = 0; i < points * 2; ++i) rim.push_back(bearing(at, i * 180.0 / points, i % 2 ? r * waist : r));
    pen.poly(rim, true).fill(fill);
}

namespace {

void topmark(Pen& pen, Point at, double s, int kind) {
    if (kind % 3 == 0) pen.circle({at.x, at.y - s * 1.6}, s * 1.5).fill(kBrick, true);
    if (kind % 3 == 1)
        pen.poly({{at.x - s * 1.6, at.y}, {at.x, at.y - s * 3}, {at.x + s * 1.6, at.y}}, true).fill(kInk, true);
    if (kind % 3 == 2)
        pen.poly({{at.x, at.y},
                  {at.x + s * 1.6, at.y - s * 1.7},
                  {at.x, at.y - s * 3.4},
                  {at.x - s * 1.6, at.y - s * 1.7}},
                 true)
            .fill(kGlassDeep, true);
    pen.stroke(kInk, 0.45);
}

void hull(Pen& pen, double s, int kind) {
    switch (kind) {
        case 0:
            pen.poly({{-3.2 * s, 0}, {-1.1 * s, -12 * s}, {1.1 * s, -12 * s}, {3.2 * s, 0}}, true);
            break;
        case 1:
            pen.box({-2.8 * s, -8 * s, 5.6 * s, 8 * s}, 0.6 * s);
            break;
        case 2:
            pen.poly({{-4 * s, 0}, {0, -10 * s}, {4 * s, 0}}, true);
            break;
        case 3:
            pen.circle({0, -3.6 * s}, 4.2 * s);
            break;
        case 4:
            pen.box({-0.9 * s, -15 * s, 1.8 * s, 15 * s});
            break;
        default:
            pen.poly({{-3.4 * s, 0},
                      {-3.4 * s, -3 * s},
                      {-1.3 * s, -4.4 * s},
                      {-0.8 * s, -12 * s},
                      {0.8 * s, -12 * s},
                      {1.3 * s, -4.4 * s},
                      {3.4 * s, -3 * s},
                      {3.4 * s, 0}},
                     true);
    }
}

constexpr double kHullTop[] = {12, 8, 10, 7.8, 15, 12};

}  // namespace

void draw_buoy(Pen& pen, Point at, double s, int kind) {
    const Hold hold(pen);
    constexpr Colour kCoats[] = {kBrick, kGlass, kInk, kStraw, kBrick, kGlassDeep};
    pen.shift(at);
    const double top = kHullTop[kind] * s;
    pen.line({0, -top}, {0, -top - 2.4 * s}).stroke(kInk, 0.8);
    topmark(pen, {0, -top - 2.2 * s}, s, kind);
    hull(pen, s, kind);
    pen.fill(kPaper);
    {
        const Hold inner(pen);
        hull(pen, s, kind);
        pen.clip();
        for (int i = 0; i < 3; ++i) pen.box({-6 * s, -top * (0.24 + 0.36 * i), 12 * s, top * 0.18});
        pen.fill(kCoats[kind]);
        for (double y = 0.5; y < top + s; y += 0.8)
            pen.line({s * 1.0 + s * 0.4 * std::sin(y * 2), -y}, {6 * s, -y}).stroke(mix(kInk, kPaper, 0.3), 0.25);
    }
    hull(pen, s, kind);
    pen.stroke(kInk, 0.6);
    for (int i = 0; i < 3; ++i) {
        const double w = (7.5 - i * 1.6) * s, y = 0.2 * s + i * 1.1 * s;
        pen.move({-w, y}).curve({-w * 0.5, y + s * 0.9}, {w * 0.5, y - s * 0.7}, {w, y}).stroke(kInkMid, 0.45);
    }
}

void ground(Pen& pen, Colour colour) { pen.box(kCanvas.inset(-1)).fill(colour); }

}  // namespace art
