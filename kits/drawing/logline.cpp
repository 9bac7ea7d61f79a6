// SPDX-License-Identifier: GPL-3.0-or-later
#include "logline.h"

#include "lettering.h"
#include "rope.h"

namespace art {
namespace {

void chip(Pen& pen, Point at, double r) {
    const Hold hold(pen);
    pen.shift(at).turn(-12);
    pen.move({0, 0}).arc({0, 0}, r, 90 + 45, 270 - 45).close();
    pen.fill(kBuffMid, true).stroke(kInk, 0.7);
    for (const double k : {0.86, 0.72, 0.56, 0.4, 0.24})
        pen.arc({0, 0}, r * k, 141, 219).stroke(mix(kInk, kBuffMid, 0.35), 0.3);
    pen.arc({0, 0}, r * 0.95, 136, 224).stroke(kBrick, 1.6);
    for (const double a : {143.0, 217.0}) pen.circle(bearing({0, 0}, a, r * 0.86), 0.7).fill(kInk);
    pen.circle({0, r * 0.14}, 0.7).fill(kInk);
}

void reel(Pen& pen, Point at, double w) {
    for (int i = 0; i < 11; ++i) {
        const double x = at.x - w * 0.3 + w * 0.6 * i / 10;
        pen.move({x, at.y - w * 0.2})
            .curve({x + 1.2, at.y - w * 0.1}, {x + 1.2, at.y + w * 0.1}, {x, at.y + w * 0.2})
            .stroke(kInk, 0.4);
    }
    pen.box({at.x - w * 0.32, at.y - w * 0.21, w * 0.64, w * 0.42}, 1).stroke(kInk, 0.5);
    for (const double side : {-1.0, 1.0}) {
        pen.box({at.x + side * w * 0.35 - 1.3, at.y - w * 0.3, 2.6, w * 0.6}, 1).fill(kBuffMid, true).stroke(kInk, 0.6);
        pen.box({at.x + side * w * 0.47 - w * 0.1, at.y - 1.1, w * 0.2, 2.2}, 1.1)
            .fill(kBrickSoft, true)
            .stroke(kInk, 0.5);
    }
}

}  // namespace

void draw_sand_glass(Pen& pen, Point c, double h) {
    const double w = h * 0.3;
    const auto bulb = [&](double dir) {
        pen.move({c.x - 0.5, c.y})
            .curve({c.x - w * 0.3, c.y + dir * h * 0.14}, {c.x - w, c.y + dir * h * 0.14},
                   {c.x - w, c.y + dir * h * 0.32});
        pen.curve({c.x - w, c.y + dir * h * 0.4}, {c.x - w * 0.5, c.y + dir * h * 0.42}, {c.x, c.y + dir * h * 0.42});
        pen.curve({c.x + w * 0.5, c.y + dir * h * 0.42}, {c.x + w, c.y + dir * h * 0.4},
                  {c.x + w, c.y + dir * h * 0.32});
        pen.curve({c.x + w, c.y + dir * h * 0.14}, {c.x + w * 0.3, c.y + dir * h * 0.14}, {c.x + 0.5, c.y}).close();
    };
    for (const double dir : {-1.0, 1.0}) {
        bulb(dir);
        pen.fill(kPaper);
        {
            const Hold hold(pen);
            bulb(dir);
            pen.clip();
            const double top = dir < 0 ? c.y - h * 0.17 : c.y + h * 0.3;
            pen.move({c.x - w, top + (dir > 0 ? 2.5 : 0)})
                .curve({c.x - w * 0.4, top}, {c.x, top + (dir > 0 ? -4 : 3)}, {c.x + w, top + (dir > 0 ? 2.5 : 0)});
            pen.to({c.x + w, top + h * 0.3}).to({c.x - w, top + h * 0.3}).close().fill(kBuffDeep);
        }
        bulb(dir);
        pen.stroke(kInk, 0.6);
        pen.box({c.x - w * 1.25, c.y + dir * h * 0.46 - h * 0.035, w * 2.5, h * 0.07}, 1)
            .fill(kBrickSoft, true)
            .stroke(kInk, 0.6);
    }
    pen.line({c.x, c.y}, {c.x, c.y + h * 0.3}).stroke(kBuffDeep, 0.6);
    for (const double side : {-1.0, 1.0})
        pen.box({c.x + side * w * 1.12 - 0.6, c.y - h * 0.43, 1.2, h * 0.86}).fill(kBuffMid, true).stroke(kInk, 0.4);
}

void draw_log_line(Pen& pen, const Box& b) {
    reel(pen, {b.x + 30, b.y + 17}, 36);
    draw_sand_glass(pen, {b.right() - 20, b.y + 27}, 46);
    const Path line = curve_through({{b.x + 34, b.y + 24},
                                     {b.x + 50, b.y + 40},
                                     {b.x + 66, b.y + 56},
                                     {b.x + 40, b.y + 66},
                                     {b.x + 12, b.y + 66},
                                     {b.x + 14, b.y + 84},
                                     {b.x + 48, b.y + 88},
                                     {b.x + 82, b.y + 84}});
    draw_rope(pen, line, {.thickness = 1.5, .fill = kPaper, .points = 0.35});
    const double total = length_of(line);
    for (int i = 1; i <= 7; ++i) {
        const Point p = point_at(line, total * (0.16 + 0.105 * i));
        pen.ellipse(p, 1.9, 1.5).fill(i % 2 ? kBrick : kGlassDeep, true).stroke(kInk, 0.45);
        const Point d = point_at(line, total * (0.16 + 0.105 * i) + 0.5) - p;
        const bool upright = std::abs(d.y) > std::abs(d.x);
        put(pen, upright ? Point{p.x + 4, p.y + 1} : Point{p.x, p.y - 3.2}, std::to_string(8 - i), sized(kFigures, 8),
            kInk, Align::centre);
    }
    const Point end = line.back();
    const Point apex{end.x + 12, end.y + 2};
    chip(pen, apex, 20);
    // The bridle: three legs from the line to the holes of the chip, which hangs 12 degrees over.
    for (const double a : {131.0, 205.0}) pen.line(end, bearing(apex, a, 20 * 0.86));
    pen.line(end, bearing(apex, 168, 20 * 0.14)).stroke(kInk, 0.5);
}

}  // namespace art
