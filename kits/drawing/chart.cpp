// SPDX-License-Identifier: GPL-3.0-or-later
#include "chart.h"

#include <algorithm>

#include "chance.h"
#include "lettering.h"

namespace art {
namespace {

void trace(Pen& pen, const std::vector<Path>& outlines) {
    for (const Path& p : outlines) pen.smooth(p, true);
}

void region(Pen& pen, const Box& box, const Field& field, double level, Colour fill) {
    trace(pen, field.above(level, box));
    pen.fill(fill);
}

void lines(Pen& pen, const Box& box, const Field& field, double level, Colour ink, double points) {
    trace(pen, field.above(level, box));
    pen.stroke(ink, points);
}

}  // namespace

void draw_ground(Pen& pen, const Box& box, const Field& field, const ChartTone& tone) {
    const Hold hold(pen);
    pen.box(box).clip();
    pen.box(box.inset(-1)).fill(tone.water);
    pen.even_odd(true);
    region(pen, box, field, -0.35, mix(tone.water, tone.shallow, 0.5));
    region(pen, box, field, -0.18, tone.shallow);
    region(pen, box, field, -0.06, tone.foreshore);
    region(pen, box, field, 0, tone.land);
    for (const double depth : {-0.95, -0.72, -0.52, -0.35, -0.18})
        lines(pen, box, field, depth, tone.contour, depth > -0.3 ? 0.5 : 0.35);
    for (const double height : {0.18, 0.36, 0.54, 0.72, 0.9})
        lines(pen, box, field, height, mix(tone.land, tone.coast, 0.3), 0.3);
    lines(pen, box, field, -0.06, tone.contour, 0.3);
    lines(pen, box, field, 0, tone.coast, tone.points);
}

void draw_soundings(Pen& pen, const Box& box, const Field& field, const ChartTone& tone, const std::vector<Box>& free,
                    unsigned seed, double spacing) {
    Chance chance(seed);
    int row = 0;
    for (double y = box.y + spacing / 2; y < box.bottom(); y += spacing * 0.85, ++row)
        for (double x = box.x + (row % 2 ? spacing / 2 : spacing); x < box.right(); x += spacing) {
            const Point p{x + chance.between(-1.6, 1.6), y + chance.between(-1.4, 1.4)};
            const double depth = -field.at(p);
            const bool kept = std::any_of(free.begin(), free.end(), [&](const Box& b) { return b.holds(p, 2.5); });
            if (kept || depth < 0.1 || !box.holds(p, -2.5)) continue;
            const int metres = static_cast<int>(depth * 38);
            put(pen, {p.x, p.y + 0.8}, std::to_string(std::max(metres, 1)), sized(kTiny, 5), tone.sounding,
                Align::centre);
        }
}

void draw_chart_frame(Pen& pen, const Box& b, Colour ink, double division) {
    const auto ladder = [&](bool across, double fixed) {
        const double span = across ? b.w : b.h;
        const int parts = static_cast<int>(std::round(span / division / 2)) * 2;
        for (int i = 0; i < parts; i += 2) {
            const double at = span * i / parts, step = span / parts;
            pen.box(across ? Box{b.x + at, fixed, step, 1.1} : Box{fixed, b.y + at, 1.1, step});
        }
        pen.fill(ink);
    };
    ladder(true, b.y - 1.1), ladder(true, b.bottom()), ladder(false, b.x - 1.1), ladder(false, b.right());
    pen.box(b).stroke(ink, 0.35);
    pen.box(b.inset(-1.1)).stroke(ink, 0.35);
    pen.box(b.inset(-1.9)).stroke(ink, 0.7);
}

void light_mark(Pen& pen, Point at, double size) {
    Path star;
    for (int i = 0; i < 10; ++i) star.push_back(bearing(at, i * 36, i % 2 ? size * 0.42 : size));
    const Point tip = bearing(at, 130, size * 4.4);
    pen.move(at).curve(bearing(at, 142, size * 2.4), bearing(tip, 205, size * 1.1), tip);
    pen.curve(bearing(tip, 55, size * 1.1), bearing(at, 118, size * 2.4), at).close().fill(kBrick);
    pen.poly(star, true).fill(kInk);
    pen.circle(at, size * 0.22).fill(kWhite);
}

void rock_mark(Pen& pen, Point at) {
    for (const double a : {0.0, 90.0}) pen.line(bearing(at, a, 1), bearing(at, a + 180, 1));
    pen.stroke(kInk, 0.4);
    for (int i = 0; i < 8; ++i) pen.circle(bearing(at, i * 45 + 22, 1.9), 0.14).fill(kInk);
}

void wreck_mark(Pen& pen, Point at) {
    pen.line({at.x - 2, at.y}, {at.x + 2, at.y});
    for (const double dx : {-1.0, 0.0, 1.0})
        pen.line({at.x + dx, at.y - (dx == 0 ? 1.2 : 0.7)}, {at.x + dx, at.y + (dx == 0 ? 1.2 : 0.7)});
    pen.stroke(kInk, 0.4);
}

void anchor_mark(Pen& pen, Point at, double s, Colour ink) {
    const auto p = [&](double x, double y) { return Point{at.x + x * s, at.y + y * s}; };
    pen.circle(p(0, -0.85), s * 0.15).line(p(0, -0.7), p(0, 0.9)).line(p(-0.4, -0.45), p(0.4, -0.45));
    pen.stroke(ink, s * 0.3);
    pen.move(p(-0.75, 0.2)).curve(p(-0.7, 0.75), p(-0.3, 0.9), p(0, 0.95));
    pen.curve(p(0.3, 0.9), p(0.7, 0.75), p(0.75, 0.2)).stroke(ink, s * 0.3);
    for (const double k : {-1.0, 1.0})
        pen.poly({p(k * 0.95, 0.45), p(k * 0.78, 0.0), p(k * 0.5, 0.38)}, true).fill(ink);
}

void scale_bar(Pen& pen, Point at, double width, int parts, const std::string& unit) {
    for (int i = 0; i < parts; ++i) {
        const Box b{at.x + width * i / parts, at.y, width / parts, 1.2};
        pen.box(b).fill(i % 2 ? kPaper : kInk);
        pen.box(b).stroke(kInk, 0.35);
        put(pen, {b.x, at.y - 0.9}, std::to_string(i), kTiny, kInk, Align::centre);
    }
    put(pen, {at.x + width, at.y - 0.9}, std::to_string(parts), kTiny, kInk, Align::centre);
    put(pen, {at.x + width / 2, at.y + 4}, unit, sized(kNote, 6.5), kInk, Align::centre);
}

}  // namespace art
