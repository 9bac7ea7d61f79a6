// SPDX-License-Identifier: GPL-3.0-or-later
#include "shells.h"

#include "chance.h"

namespace art {

void scallop(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    const Point hinge{at.x, at.y + s * 0.85};
    pen.poly({{hinge.x - s * 0.42, hinge.y - s * 0.02},
              {hinge.x - s * 0.36, hinge.y - s * 0.36},
              {hinge.x + s * 0.36, hinge.y - s * 0.36},
              {hinge.x + s * 0.42, hinge.y - s * 0.02}},
             true)
        .fill(fill, true)
        .stroke(ink, 0.5);
    const int ribs = 11;
    const auto rim = [&](double k) { return bearing(hinge, -58 + 116 * k, s * (1.52 + 0.2 * std::sin(kPi * k))); };
    pen.move(hinge).to(rim(0));
    for (int i = 0; i < ribs; ++i) {
        const double a = -58 + 116.0 * i / ribs, b = -58 + 116.0 * (i + 1) / ribs;
        const double r = s * (1.66 + 0.2 * std::sin(kPi * (i + 0.5) / ribs));
        pen.curve(bearing(hinge, a + 1.5, r), bearing(hinge, b - 1.5, r), rim((i + 1.0) / ribs));
    }
    pen.close().fill(fill, true).stroke(ink, 0.6);
    for (int i = 1; i < ribs; ++i)
        pen.line(bearing(hinge, -58 + 116.0 * i / ribs, s * 0.18), rim(1.0 * i / ribs)).stroke(ink, 0.35);
    for (const double k : {0.5, 0.72, 0.88, 0.96}) {
        Path growth;
        for (int i = 0; i <= 20; ++i) growth.push_back(hinge + (rim(i / 20.0) - hinge) * k);
        pen.smooth(growth, false).stroke(ink, 0.25);
    }
}

void limpet(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    Chance chance(7);
    const Point top{at.x - s * 0.08, at.y + s * 0.1};
    Path rim;
    for (int i = 0; i < 52; ++i) {
        const Point p = bearing({0, 0}, i * 360.0 / 52, s * (i % 2 ? 0.955 : 1.0) * chance.between(0.985, 1.015));
        rim.push_back({at.x + p.x, at.y + p.y * 0.84});
    }
    pen.smooth(rim, true).fill(fill, true).stroke(ink, 0.6);
    for (const double k : {0.78, 0.58, 0.38, 0.2}) {
        Path ring;
        for (const Point p : rim) ring.push_back(top + (p - top) * k);
        pen.smooth(ring, true).stroke(ink, 0.3);
    }
    for (std::size_t i = 0; i < rim.size(); i += 2)
        pen.line(top + (rim[i] - top) * (i % 4 ? 0.4 : 0.12), rim[i]).stroke(ink, 0.28);
}

namespace {

// One whorl after another on a cone; shared by the spired shells.
void spire(Pen& pen, Point foot, double height, double width, double step0, int whorls, Colour fill, Colour ink) {
    double y = 0;
    for (int i = 0; i < whorls; ++i) {
        const double k0 = 1 - y / height, step = height * step0 * k0;
        const double w0 = width * k0 / 2, w1 = width * (1 - (y + step) / height) / 2;
        const double lean = w0 * 0.32;
        pen.move({foot.x - w0, foot.y - y + lean * 0.3});
        pen.curve({foot.x - w0 * 1.22, foot.y - y - step * 0.55}, {foot.x - w1 * 1.1, foot.y - y - step},
                  {foot.x - w1, foot.y - y - step + lean * 0.2});
        pen.curve({foot.x - w1 * 0.4, foot.y - y - step + lean}, {foot.x + w1 * 0.6, foot.y - y - step + lean * 0.5},
                  {foot.x + w1, foot.y - y - step - lean * 0.4});
        pen.curve({foot.x + w1 * 1.1, foot.y - y - step}, {foot.x + w0 * 1.22, foot.y - y - step * 0.5},
                  {foot.x + w0, foot.y - y - lean * 0.4});
        pen.curve({foot.x + w0 * 0.6, foot.y - y + lean * 0.6}, {foot.x - w0 * 0.4, foot.y - y + lean * 1.2},
                  {foot.x - w0, foot.y - y + lean * 0.3});
        pen.close().fill(fill, true).stroke(ink, 0.5);
        for (const double f : {0.25, 0.4, 0.53, 0.65, 0.76}) {
            const double x0 = foot.x + w0 * 1.05 * f, x1 = foot.x + w1 * f;
            pen.move({x0, foot.y - y + lean * 0.1})
                .curve({x0 + w0 * 0.14, foot.y - y - step * 0.35}, {x1 + w0 * 0.14, foot.y - y - step * 0.6},
                       {x1, foot.y - y - step + lean * 0.5});
            pen.stroke(ink, 0.25);
        }
        y += step;
    }
}

}  // namespace

void auger_shell(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    spire(pen, {at.x, at.y + s * 0.9}, s * 2, s * 0.84, 0.2, 12, fill, ink);
}

void whelk(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    const Point f{at.x, at.y + s * 0.15};
    pen.move({f.x - s * 0.56, f.y})
        .curve({f.x - s * 0.72, f.y + s * 0.4}, {f.x - s * 0.3, f.y + s * 0.75}, {f.x - s * 0.08, f.y + s * 0.95});
    pen.curve({f.x + s * 0.1, f.y + s * 0.98}, {f.x + s * 0.16, f.y + s * 0.9}, {f.x + s * 0.2, f.y + s * 0.78});
    pen.curve({f.x + s * 0.62, f.y + s * 0.5}, {f.x + s * 0.74, f.y + s * 0.2}, {f.x + s * 0.56, f.y - s * 0.1})
        .close();
    pen.fill(fill, true).stroke(ink, 0.6);
    spire(pen, f, s * 1.15, s * 1.12, 0.34, 6, fill, ink);
    pen.move({f.x + s * 0.1, f.y + s * 0.1})
        .curve({f.x + s * 0.5, f.y + s * 0.0}, {f.x + s * 0.5, f.y + s * 0.5}, {f.x + s * 0.1, f.y + s * 0.84});
    pen.curve({f.x - s * 0.08, f.y + s * 0.6}, {f.x - s * 0.05, f.y + s * 0.25}, {f.x + s * 0.1, f.y + s * 0.1})
        .close();
    pen.fill(mix(fill, ink, 0.35), true).stroke(ink, 0.45);
    for (const double k : {0.12, 0.26, 0.4})
        pen.move({f.x - s * (0.56 - k * 0.7), f.y + s * 0.16})
            .curve({f.x - s * (0.62 - k), f.y + s * 0.4}, {f.x - s * (0.4 - k * 0.7), f.y + s * 0.62},
                   {f.x - s * 0.1, f.y + s * 0.86})
            .stroke(ink, 0.25);
}

void mussel(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    const Hold hold(pen);
    pen.shift(at).turn(28);
    const auto outline = [&](double k) {
        const Point tip{0, -s * 0.95};
        const auto p = [&](double x, double y) { return tip + (Point{x * s, y * s} - tip) * k; };
        pen.move(tip).curve(p(0.52, -0.6), p(0.66, 0.5), p(0.2, 0.92));
        pen.curve(p(-0.1, 1.08), p(-0.44, 0.85), p(-0.4, 0.35)).curve(p(-0.36, -0.2), p(-0.24, -0.7), tip).close();
    };
    outline(1);
    pen.fill(fill, true).stroke(ink, 0.6);
    for (const double k : {0.9, 0.8, 0.7, 0.6, 0.48, 0.36, 0.24}) outline(k), pen.stroke(ink, 0.28);
}

void starfish(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    Path rim;
    for (int i = 0; i < 5; ++i) {
        const double a = i * 72 + 8;
        rim.push_back(bearing(at, a - 7, s * 0.92));
        rim.push_back(bearing(at, a, s * 1.0));
        rim.push_back(bearing(at, a + 7, s * 0.92));
        rim.push_back(bearing(at, a + 22, s * 0.44));
        rim.push_back(bearing(at, a + 36, s * 0.34));
        rim.push_back(bearing(at, a + 50, s * 0.44));
    }
    pen.smooth(rim, true).fill(fill, true).stroke(ink, 0.6);
    for (int i = 0; i < 5; ++i)
        for (int k = 1; k < 9; ++k) {
            const Point p = bearing(at, i * 72 + 8, s * k * 0.1);
            pen.circle(p, s * 0.022).fill(ink);
            if (k > 1 && k < 7)
                for (const double side : {-1.0, 1.0})
                    pen.circle(bearing(p, i * 72 + 98, side * s * (0.15 - 0.013 * k)), s * 0.014).fill(ink);
        }
}

void urchin(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    pen.circle(at, s * 0.92).fill(fill, true).stroke(ink, 0.6);
    for (int i = 0; i < 10; ++i)
        for (int k = 2; k < 12; ++k)
            for (const double side : {-1.0, 1.0}) {
                const double r = s * k * 0.075;
                pen.circle(bearing(at, i * 36 + side * (i % 2 ? 4 : 9), r), s * (0.012 + 0.0016 * k)).fill(ink);
            }
    for (int i = 0; i < 5; ++i) {
        const double a = i * 72;
        pen.move(at).curve(bearing(at, a - 22, s * 0.3), bearing(at, a - 8, s * 0.56), bearing(at, a, s * 0.62));
        pen.curve(bearing(at, a + 8, s * 0.56), bearing(at, a + 22, s * 0.3), at).stroke(ink, 0.35);
    }
    pen.circle(at, s * 0.07).fill(ink);
}

void razor(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    const Hold hold(pen);
    pen.shift(at).turn(14);
    const Box b{-s * 0.2, -s, s * 0.4, s * 2};
    pen.box(b, s * 0.1).fill(fill, true).stroke(ink, 0.6);
    for (int i = 0; i < 7; ++i) {
        const double y = -s * 0.7 + s * 0.22 * i;
        pen.move({-s * 0.2, y})
            .curve({0, y + s * 0.05}, {s * 0.12, y + s * 0.2}, {s * 0.13, y + s * 0.95 - s * 0.12 * i})
            .stroke(ink, 0.28);
    }
    pen.line({s * 0.13, -s * 0.9}, {s * 0.13, s * 0.92}).stroke(ink, 0.3);
}

void weed(Pen& pen, Point at, double s, Colour fill, Colour ink) {
    for (const double lean : {-0.55, 0.0, 0.5}) {
        Path stem;
        for (int i = 0; i <= 8; ++i)
            stem.push_back({at.x + s * lean * (i / 8.0) * (i / 8.0) * 1.2 + s * 0.06 * std::sin(i * 1.3),
                            at.y + s - s * 0.25 * i * (lean == 0 ? 1 : 0.86)});
        pen.smooth(stem, false).stroke(ink, 0.6);
        for (std::size_t i = 2; i < stem.size(); ++i)
            for (const double side : {-1.0, 1.0}) {
                const Hold hold(pen);
                pen.shift(stem[i]).turn(side * 48 + lean * 30);
                pen.ellipse({0, -s * 0.14}, s * 0.045, s * 0.12).fill(fill, true).stroke(ink, 0.35);
            }
    }
}

}  // namespace art
