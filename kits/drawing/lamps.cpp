// SPDX-License-Identifier: GPL-3.0-or-later
#include "lamps.h"

namespace art {
namespace {

// Draws in units of the lamp's height, y upwards from the foot.
struct Unit {
    Point foot;
    double h;
    Point operator()(double x, double y) const { return {foot.x + x * h, foot.y - y * h}; }
};

void done(Pen& pen, Colour fill) { pen.fill(fill, true).stroke(kDusk, 0.6); }

void shade_lines(Pen& pen, const Unit& p, double x, double from, double to, double reach) {
    for (double y = from; y < to; y += 0.9 / p.h)
        pen.line(p(x, y), p(x - reach * (0.8 + 0.2 * std::sin(y * 97)), y)).stroke(kDuskMid, 0.28);
}

}  // namespace

void flame(Pen& pen, Point base, double h) {
    const auto p = [&](double x, double y) { return Point{base.x + x * h, base.y - y * h}; };
    pen.move(p(0, 1)).curve(p(0.1, 0.7), p(0.32, 0.5), p(0.3, 0.24)).curve(p(0.28, 0.06), p(0.14, 0), p(0, 0));
    pen.curve(p(-0.14, 0), p(-0.28, 0.06), p(-0.3, 0.24)).curve(p(-0.32, 0.5), p(-0.04, 0.62), p(0, 1)).close();
    pen.fill(kStraw, true).stroke(kAmber, 0.5);
    pen.move(p(0, 0.5))
        .curve(p(0.14, 0.34), p(0.14, 0.08), p(0, 0.06))
        .curve(p(-0.14, 0.08), p(-0.14, 0.34), p(0, 0.5))
        .close()
        .fill(kAmber);
}

void glow(Pen& pen, Point c, double inner, double outer, Colour colour) {
    for (int i = 0; i < 48; ++i) {
        if (i > 17 && i < 31) continue;  // what stands below the flame throws a shadow
        const double far = i % 4 == 0 ? outer : i % 2 == 0 ? outer * 0.9 : outer * 0.82;
        const double near = inner + (i % 2) * (outer - inner) * 0.22;
        pen.line(bearing(c, i * 7.5, near), bearing(c, i * 7.5, far)).stroke(colour, 0.45);
    }
}

void oil_lamp(Pen& pen, Point foot, double h) {
    const Unit p{foot, h};
    pen.move(p(-0.2, 0)).curve(p(-0.2, 0.07), p(-0.06, 0.06), p(-0.05, 0.13)).to(p(0.05, 0.13));
    pen.curve(p(0.06, 0.06), p(0.2, 0.07), p(0.2, 0)).close();
    done(pen, kAmber);
    pen.move(p(-0.08, 0.12)).curve(p(-0.26, 0.16), p(-0.26, 0.34), p(-0.09, 0.37)).to(p(0.09, 0.37));
    pen.curve(p(0.26, 0.34), p(0.26, 0.16), p(0.08, 0.12)).close();
    done(pen, kBuffMid);
    shade_lines(pen, p, 0.2, 0.19, 0.31, 0.12);
    pen.box({p(-0.1, 0.43).x, p(0, 0.43).y, 0.2 * h, 0.06 * h}, 0.01 * h);
    done(pen, kAmber);
    pen.circle(p(0.14, 0.4), 0.028 * h);
    done(pen, kAmber);
    pen.move(p(-0.085, 0.43))
        .curve(p(-0.2, 0.52), p(-0.19, 0.62), p(-0.09, 0.72))
        .curve(p(-0.06, 0.78), p(-0.055, 0.9), p(-0.055, 1));
    pen.to(p(0.055, 1))
        .curve(p(0.055, 0.9), p(0.06, 0.78), p(0.09, 0.72))
        .curve(p(0.19, 0.62), p(0.2, 0.52), p(0.085, 0.43))
        .close();
    done(pen, kGlow);
    flame(pen, p(0, 0.445), 0.2 * h);
    pen.move(p(0.1, 0.53)).curve(p(0.15, 0.58), p(0.12, 0.64), p(0.07, 0.71)).stroke(kDuskSoft, 0.5);
}

void hand_lantern(Pen& pen, Point foot, double h) {
    const Unit p{foot, h};
    pen.move(p(-0.16, 0.66)).curve(p(-0.3, 1.08), p(0.3, 1.08), p(0.16, 0.66)).stroke(kDusk, 1.1);
    pen.poly({p(-0.2, 0), p(0.2, 0), p(0.17, 0.13), p(-0.17, 0.13)}, true);
    done(pen, kBrickSoft);
    shade_lines(pen, p, 0.18, 0.02, 0.12, 0.12);
    pen.box({p(-0.15, 0.58).x, p(0, 0.58).y, 0.3 * h, 0.45 * h});
    done(pen, kGlow);
    flame(pen, p(0, 0.17), 0.24 * h);
    for (const double x : {-0.15, -0.055, 0.055, 0.15}) pen.line(p(x, 0.13), p(x, 0.58)).stroke(kDusk, 0.6);
    for (const double y : {0.25, 0.44}) pen.line(p(-0.17, y), p(0.17, y)).stroke(kDusk, 0.6);
    pen.poly({p(-0.2, 0.58), p(0.2, 0.58), p(0.08, 0.72), p(-0.08, 0.72)}, true);
    done(pen, kBrickSoft);
    pen.box({p(-0.06, 0.78).x, p(0, 0.78).y, 0.12 * h, 0.06 * h});
    done(pen, kBrickSoft);
}

void candle(Pen& pen, Point foot, double h) {
    const Unit p{foot, h};
    pen.ellipse(p(0, 0.05), 0.27 * h, 0.05 * h);
    done(pen, kAmber);
    pen.circle(p(0.31, 0.08), 0.065 * h).stroke(kDusk, 1.0);
    pen.box({p(-0.1, 0.14).x, p(0, 0.14).y, 0.2 * h, 0.09 * h}, 0.02 * h);
    done(pen, kAmber);
    pen.box({p(-0.075, 0.68).x, p(0, 0.68).y, 0.15 * h, 0.54 * h}, 0.01 * h);
    done(pen, kPaper);
    shade_lines(pen, p, 0.075, 0.16, 0.66, 0.05);
    pen.move(p(-0.075, 0.66))
        .curve(p(-0.08, 0.56), p(-0.035, 0.52), p(-0.035, 0.6))
        .curve(p(-0.03, 0.66), p(0, 0.63), p(0.02, 0.66))
        .stroke(kDusk, 0.5);
    pen.line(p(0, 0.68), p(0, 0.74)).stroke(kDusk, 0.8);
    flame(pen, p(0, 0.72), 0.28 * h);
}

void wall_lamp(Pen& pen, Point foot, double h) {
    const Unit p{foot, h};
    pen.box({p(-0.34, 0.6).x, p(0, 0.6).y, 0.08 * h, 0.46 * h}, 0.02 * h);
    done(pen, kDuskSoft);
    pen.move(p(-0.26, 0.3)).curve(p(-0.14, 0.22), p(-0.02, 0.22), p(0.06, 0.32)).stroke(kDusk, 1.6);
    pen.move(p(-0.08, 0.3)).to(p(0.2, 0.3)).to(p(0.15, 0.42)).to(p(-0.03, 0.42)).close();
    done(pen, kAmber);
    pen.circle(p(0.06, 0.6), 0.19 * h);
    done(pen, kGlow);
    flame(pen, p(0.06, 0.47), 0.24 * h);
    pen.move(p(-0.02, 0.775)).to(p(0.14, 0.775)).to(p(0.11, 0.98)).to(p(0.01, 0.98)).close();
    done(pen, kGlow);
}

namespace {

struct Wing {
    Colour fore, hind, mark;
    double reach, droop;
};

Wing wing_of(int kind) {
    constexpr Wing kWings[] = {{kBuffMid, kBuff, kBrick, 1.0, 0.30},
                               {kDuskSoft, kDuskPale, kDusk, 1.05, 0.42},
                               {kStraw, kGlow, kAmber, 0.92, 0.2},
                               {kGlassSoft, kGlassPale, kGlassDeep, 0.98, 0.6}};
    return kWings[kind % 4];
}

void half_moth(Pen& pen, double s, const Wing& w) {
    const auto p = [&](double x, double y) { return Point{x * s, y * s}; };
    pen.move(p(0.04, 0.02)).curve(p(0.3, 0.0), p(0.62, 0.2), p(0.6, 0.34 + w.droop * 0.4));
    pen.curve(p(0.5, 0.62 + w.droop * 0.3), p(0.2, 0.56 + w.droop * 0.2), p(0.04, 0.22)).close();
    pen.fill(w.hind, true).stroke(kDusk, 0.5);
    const double low = 0.34 + w.droop * 0.4;
    for (const double k : {0.16, 0.3, 0.44})
        pen.line(p(0.09, 0.16), p(0.13 + k * 0.75, low + 0.08 - k * 0.28)).stroke(kDuskMid, 0.28);
    pen.move(p(0.04, -0.16)).curve(p(0.3, -0.5), p(0.7, -0.56), p(w.reach, -0.44));
    pen.curve(p(w.reach * 0.98, -0.2), p(w.reach * 0.86, 0.0), p(w.reach * 0.74, 0.1))
        .curve(p(0.5, 0.16), p(0.2, 0.14), p(0.04, 0.08))
        .close();
    pen.fill(w.fore, true).stroke(kDusk, 0.6);
    for (int i = 0; i < 6; ++i)
        pen.line(p(0.1, -0.06), p(w.reach * (0.72 + 0.05 * i), 0.04 - 0.08 * i)).stroke(kDuskMid, 0.28);
    pen.move(p(w.reach * 0.84, -0.44))
        .curve(p(w.reach * 0.8, -0.22), p(w.reach * 0.72, -0.06), p(w.reach * 0.62, 0.1))
        .stroke(w.mark, 0.9);
    pen.circle(p(0.5, -0.2), s * 0.085).fill(w.mark, true).stroke(kDusk, 0.4);
    pen.circle(p(0.5, -0.2), s * 0.035).fill(kPaper);
    pen.circle(p(0.36, 0.3), s * 0.05).fill(w.mark);
    pen.move(p(0.03, -0.34)).curve(p(0.1, -0.56), p(0.2, -0.66), p(0.34, -0.7)).stroke(kDusk, 0.5);
    for (int i = 0; i < 5; ++i)
        pen.line(p(0.1 + i * 0.05, -0.5 - i * 0.045), p(0.15 + i * 0.05, -0.48 - i * 0.03)).stroke(kDusk, 0.3);
}

}  // namespace

void draw_moth(Pen& pen, Point at, double span, int kind, double tilt) {
    const Hold hold(pen);
    pen.shift(at).turn(tilt);
    const double s = span / 2;
    const Wing w = wing_of(kind);
    half_moth(pen, s, w);
    {
        const Hold mirrored(pen);
        cairo_scale(pen.context(), -1, 1);
        half_moth(pen, s, w);
    }
    pen.ellipse({0, s * 0.14}, s * 0.085, s * 0.34).fill(w.fore, true).stroke(kDusk, 0.5);
    for (int i = 0; i < 5; ++i)
        pen.line({-s * 0.075, s * (0.08 + 0.08 * i)}, {s * 0.075, s * (0.08 + 0.08 * i)}).stroke(kDusk, 0.35);
    pen.ellipse({0, -s * 0.2}, s * 0.1, s * 0.14).fill(w.fore, true).stroke(kDusk, 0.5);
    pen.circle({0, -s * 0.35}, s * 0.07).fill(kDusk);
}

}  // namespace art
