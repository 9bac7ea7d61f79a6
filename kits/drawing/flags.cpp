// SPDX-License-Identifier: GPL-3.0-or-later
#include "flags.h"

namespace art {
namespace {

struct Cloth {
    Colour a, b;
};

Cloth cloth_of(int n) {
    constexpr Cloth kCloths[] = {{kInk, kPaper}, {kBrick, kPaper},   {kGlassDeep, kBuff},
                                 {kInk, kStraw}, {kBrick, kBuffMid}, {kGlass, kInk}};
    return kCloths[n % 6];
}

void wavy(Pen& pen, const Box& b, double y) {
    const double a = b.h * 0.09;
    pen.move({b.x, b.bottom()}).to({b.x, y});
    for (int i = 0; i < 4; ++i) {
        const double x = b.x + b.w * i / 4, q = b.w / 4;
        pen.curve({x + q / 3, y - 2 * a}, {x + q * 2 / 3, y + 2 * a}, {x + q, y});
    }
    pen.to({b.right(), b.bottom()}).close();
}

void device(Pen& pen, const Box& b, int kind, Colour ink) {
    const Point c = b.centre();
    const double w = b.w, h = b.h;
    switch (kind) {
        case 0:
            wavy(pen, b, c.y);
            break;
        case 1:
            pen.move({c.x + h * 0.1, c.y - h * 0.3})
                .curve({c.x - h * 0.42, c.y - h * 0.26}, {c.x - h * 0.42, c.y + h * 0.26},
                       {c.x + h * 0.1, c.y + h * 0.3});
            pen.curve({c.x - h * 0.12, c.y + h * 0.16}, {c.x - h * 0.12, c.y - h * 0.16},
                      {c.x + h * 0.1, c.y - h * 0.3})
                .close()
                .circle({c.x + h * 0.22, c.y}, h * 0.08);
            break;
        case 2:
            pen.move({b.x, b.y}).curve({b.x + w * 0.1, b.y + h * 0.42}, {c.x, c.y}, {c.x + w * 0.12, c.y});
            pen.curve({c.x, c.y}, {b.x + w * 0.1, b.bottom() - h * 0.42}, {b.x, b.bottom()}).close();
            break;
        case 3:
            for (const double k : {0.2, 0.5, 0.8}) pen.ellipse({b.x + w * k, c.y}, w * 0.09, h * 0.24);
            break;
        case 4:
            for (const double x : {b.x + w * 0.3, b.x + w * 0.7})
                pen.poly({{x, b.y + h * 0.2}, {x + w * 0.16, c.y}, {x, b.bottom() - h * 0.2}, {x - w * 0.16, c.y}},
                         true);
            break;
        case 5:
            pen.move({b.x, b.y}).arc({b.x, b.y}, h * 0.62, 90, 180).close();
            pen.move({b.right(), b.bottom()}).arc({b.right(), b.bottom()}, h * 0.62, 270, 360).close();
            break;
        case 6:
            wavy(pen, b, b.y + h * 0.72);
            break;
        case 7:
            pen.move({b.x, b.bottom()})
                .to({b.x, b.y})
                .curve({b.x + w * 0.2, b.y + h * 0.6}, {b.x + w * 0.6, b.y + h * 0.3}, {b.right(), b.bottom()})
                .close();
            break;
        case 8:
            pen.box({b.x + w * 0.12, b.y, w * 0.14, h})
                .box({b.x + w * 0.43, b.y, w * 0.14, h})
                .box({b.x + w * 0.74, b.y, w * 0.14, h});
            break;
        case 9:
            pen.poly({{c.x - w * 0.09, b.bottom()},
                      {c.x - w * 0.05, b.y + h * 0.35},
                      {c.x - w * 0.1, b.y + h * 0.3},
                      {c.x, b.y + h * 0.12},
                      {c.x + w * 0.1, b.y + h * 0.3},
                      {c.x + w * 0.05, b.y + h * 0.35},
                      {c.x + w * 0.09, b.bottom()}},
                     true);
            break;
        case 10:
            pen.poly({{b.x, b.y},
                      {b.right(), c.y},
                      {b.x, b.bottom()},
                      {b.x, b.y + h * 0.66},
                      {b.x + w * 0.48, c.y},
                      {b.x, b.y + h * 0.34}},
                     true);
            break;
        default:
            pen.circle({b.x + w * 0.3, b.y + h * 0.32}, h * 0.13).circle({b.x + w * 0.7, b.y + h * 0.68}, h * 0.13);
    }
    pen.fill(ink);
}

}  // namespace

void draw_flag(Pen& pen, const Box& box, int number) {
    const Hold hold(pen);
    const Cloth cloth = cloth_of(number * 5 + number / 12);
    const bool swap = number >= 12;
    pen.box(box).fill(swap ? cloth.a : cloth.b);
    {
        const Hold inner(pen);
        pen.box(box).clip();
        device(pen, box, number % 12, swap ? cloth.b : cloth.a);
    }
    pen.box(box).stroke(kInk, 0.45);
}

void bunting(Pen& pen, Point from, Point to, double sag, int count, double size, int first) {
    const auto at = [&](double t) {
        return Point{from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t + sag * 4 * t * (1 - t)};
    };
    Path line;
    for (int i = 0; i <= 40; ++i) line.push_back(at(i / 40.0));
    pen.poly(line, false).stroke(kInk, 0.5);
    for (int i = 0; i < count; ++i) {
        const double t = (i + 0.5) / count;
        const Point a = at(t - 0.01), b = at(t + 0.01);
        const Hold hold(pen);
        pen.shift(at(t)).turn(std::atan2(b.y - a.y, b.x - a.x) * 180 / kPi);
        draw_flag(pen, {-size * 0.6, 0, size * 1.2, size}, (first + i) % kFlagCount);
    }
}

}  // namespace art
