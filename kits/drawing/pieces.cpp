// SPDX-License-Identifier: GPL-3.0-or-later
#include "pieces.h"

#include "chance.h"
#include "knots.h"
#include "moon.h"
#include "ornaments.h"
#include "places.h"
#include "shells.h"
#include "tower.h"
#include "waves.h"

namespace art {

void flood(Pen& pen, const Face& face, Colour colour) { pen.box(face.canvas().inset(-1)).fill(colour); }

double heading(Pen& pen, Point at, const std::string& title, const std::string& note, double points) {
    put(pen, at, title, sized(kTitle, points), kInk, Align::centre);
    double y = at.y + points * 0.27;
    if (!note.empty()) put(pen, {at.x, y}, note, sized(kItalic, points * 0.2 + 4.4), kInk, Align::centre);
    y += note.empty() ? 0 : points * 0.2;
    wave_rule(pen, {at.x, y}, points, kBrick, 0.7);
    return y;
}

void paper_label(Pen& pen, const Box& b) {
    pen.box(b, 1.5).fill(kPaper, true).stroke(kInk, 0.5);
    pen.box(b.inset(1.3), 0.8).stroke(kInk, 0.3);
}

void caption(Pen& pen, Point at, const std::string& text, double points) {
    put(pen, at, text, sized(kItalic, points), kInk, Align::centre);
}

void water(Pen& pen, const Face& face, double top, int rows, Colour far, Colour near, unsigned seed) {
    draw_sea(pen, {-8, top, face.width + 16, face.height + kBleed + 2 - top},
             {.far = far, .near = near, .line = kInkMid, .rows = rows, .wavelength = 22, .seed = seed});
}

void sea_chart(Pen& pen, const Face& face, Point from, const ChartTone& tone, const std::vector<Box>& free,
               unsigned seed) {
    const Hold hold(pen);
    pen.shift(from * -1);
    const auto there = [&](const Box& b) { return Box{b.x + from.x, b.y + from.y, b.w, b.h}; };
    std::vector<Box> kept;
    for (const Box& b : free) kept.push_back(there(b));
    const Field field = open_banks(29);
    const Box window = there(face.canvas().inset(-1));
    draw_ground(pen, window, field, tone);
    draw_soundings(pen, window, field, tone, kept, seed, 8.5);
}

void strewn_stars(Pen& pen, const Box& box, const std::vector<Box>& free, double gap, unsigned seed) {
    Chance chance(seed);
    int row = 0;
    for (double y = box.y + gap / 2; y < box.bottom(); y += gap, ++row)
        for (double x = box.x + (row % 2 ? gap : gap / 2); x < box.right(); x += gap) {
            const Point at{x + chance.between(-0.3, 0.3) * gap, y + chance.between(-0.3, 0.3) * gap};
            const double radius = chance.between(0.5, 1.2);
            bool kept = false;
            for (const Box& b : free) kept = kept || b.holds(at, 2);
            if (!kept) draw_star(pen, at, radius, radius > 0.95 ? kBuffDeep : kInkSoft);
        }
}

void kind_motif(Pen& pen, Point foot, int kind, double s, Colour paper) {
    switch (kind) {
        case 0:
            draw_tower(pen, foot, {.height = 10 * s, .base = 3.8 * s, .top = 2.5 * s, .house = false, .windows = 2});
            break;
        case 1:
            anchor_mark(pen, {foot.x, foot.y - 5.6 * s}, 5 * s, kInk);
            break;
        case 2:
            draw_moon(pen, {foot.x, foot.y - 6 * s}, 5.6 * s, 0.2, kInk, kPaper);
            break;
        case 3:
            scallop(pen, {foot.x, foot.y - 5.6 * s}, 5.8 * s, kBrickSoft, kInk);
            break;
        case 4:
            draw_knot(pen, {foot.x, foot.y - 4.2 * s}, reef_knot(),
                      {.rope = {.thickness = 1.5 * s, .points = 0.4}, .paper = paper, .scale = 2.6 * s});
            break;
        default:
            draw_boat(pen, {foot.x, foot.y - 1.2 * s}, 6.4 * s, kBrickSoft, kInk);
            wave_rule(pen, {foot.x, foot.y}, 16 * s, kInk, 0.5);
    }
}

void stamp(Pen& pen, const Box& b, int kind, const std::string& words, Colour under) {
    const double across = b.w / std::round(b.w / 1.9), down = b.h / std::round(b.h / 1.9);
    pen.box(b).fill(kPaper, true).stroke(kInkSoft, 0.4);
    for (double x = b.x; x < b.right() + 0.1; x += across) pen.circle({x, b.y}, 0.6).circle({x, b.bottom()}, 0.6);
    for (double y = b.y; y < b.bottom() + 0.1; y += down) pen.circle({b.x, y}, 0.6).circle({b.right(), y}, 0.6);
    pen.fill(under);
    const Box picture{b.x + 2.2, b.y + 2.2, b.w - 4.4, b.h - b.w * 0.11 - 5.6};
    pen.box(picture).fill(kind ? kBrickSoft : kGlassSoft, true).stroke(kInk, 0.35);
    const Point c = picture.centre();
    const double w = picture.w;
    if (kind) {
        scallop(pen, c, w * 0.27, kPaper, kInk);
    } else {
        draw_boat(pen, {c.x, c.y + w * 0.3}, w * 0.36, kPaper, kInk);
        for (int i = 0; i < 2; ++i) wave_rule(pen, {c.x, c.y + w * (0.39 + 0.09 * i)}, w * (0.8 - 0.3 * i), kInk, 0.5);
    }
    put(pen, {c.x, b.bottom() - 2.1}, words, sized(kCaps, 2.4 + b.w * 0.13), kInk, Align::centre);
}

void postmark(Pen& pen, Point c, double r, const std::string& above, const std::string& middle,
              const std::string& below) {
    pen.circle(c, r).stroke(kInkMid, 0.9);
    pen.circle(c, r * 0.64).stroke(kInkMid, 0.5);
    put_on_arc(pen, c, r * 0.75, 0, above, sized(spaced(kCaps, 120), r * 0.42), kInkMid);
    put(pen, {c.x, c.y}, middle, sized(kText, r * 0.72), kInkMid, Align::centre);
    put(pen, {c.x, c.y + r * 0.3}, below, sized(kNote, r * 0.5), kInkMid, Align::centre);
}

}  // namespace art
