// SPDX-License-Identifier: GPL-3.0-or-later
// Envelopes. The flaps' corners are rounded and their sides slant: nothing on them stands farther than 40 mm from the
// middle, and nothing on the lower flap where the upper one covers it.
#include "chart.h"
#include "forms.h"
#include "ornaments.h"
#include "pieces.h"
#include "rope.h"
#include "rose.h"
#include "shells.h"
#include "tower.h"
#include "waves.h"

namespace art {
namespace {

constexpr double kM = kEnvelopeFace.width / 2;

Colour tone_of(int kind) { return kind ? kBuff : kGlassPale; }

void address(Pen& pen, double x, double right) {
    for (int i = 0; i < 4; ++i) pen.line({x, 45 + 9.0 * i}, {i == 3 ? right - 18 : right, 45 + 9.0 * i});
    pen.stroke(kInkMid, 0.5);
}

void by_sea(Pen& pen) {
    const Tower tower{.height = 27, .base = 7.8, .top = 5};
    const Point foot{22, 74};
    draw_gull(pen, {46, 25}, 8, kInkMid, -8);
    draw_gull(pen, {53, 30}, 5.4, kInkMid, 6);
    draw_beams(pen, {foot.x, foot.y - lamp_height(tower)}, 15, kBuffDeep, 0.35);
    water(pen, kEnvelopeFace, 71, 4, kGlassPale, kGlassSoft, 6);
    draw_rock(pen, {foot.x + 4, foot.y}, 32, 10, kPaper, kInk, 4);
    draw_tower(pen, foot, tower);
    water(pen, kEnvelopeFace, 80, 2, kGlassSoft, kGlass, 7);
    pen.box({51, 36, 73, 40}, 2).fill(kPaper);
    address(pen, 55, 120);
}

void by_land(Pen& pen) {
    rope_frame(pen, {7.4, 7.4, kEnvelopeFace.width - 14.8, kEnvelopeFace.height - 14.8}, 8, {.thickness = 2.4});
    draw_rose(pen, {32, 55}, 17, {.light = kBuff, .degrees = false});
    address(pen, 56, 116);
}

// A seal in the middle: a ring of words around a small picture.
void seal(Pen& pen, Point c, int kind) {
    pen.circle(c, 16).fill(kPaper, true).stroke(kInk, 0.7);
    pen.circle(c, 15).stroke(kInk, 0.3);
    pen.circle(c, 11.2).stroke(kInk, 0.3);
    put_on_arc(pen, c, 12.2, 0, kind ? "FROM THE STRAND" : "KEEP THE LIGHT", sized(spaced(kCaps, 120), 5), kBrick);
    for (int i = -2; i <= 2; ++i) draw_star(pen, bearing(c, 180 + i * 22, 13.1), i % 2 ? 0.7 : 1.1, kBrick);
    if (kind) {
        scallop(pen, {c.x, c.y + 0.2}, 7, kBrickSoft, kInk);
    } else {
        draw_beams(pen, {c.x, c.y - 3.2}, 8.6, kBuffDeep, 0.3);
        draw_tower(pen, {c.x, c.y + 7.6}, {.height = 9.6, .base = 3.8, .top = 2.5, .house = false, .windows = 2});
        wave_rule(pen, {c.x, c.y + 8}, 12, kInk, 0.5);
    }
}

void small_waves(Pen& pen, const Face& face, int kind, double foot) {
    flood(pen, face, tone_of(kind));
    int row = 0;
    for (double y = 2; y < foot; y += 5, ++row)
        for (int k = -6; k <= 6; ++k)
            wave_rule(pen, {face.width / 2 + k * 13.0 + (row % 2 ? 6.5 : 0), y}, 8.4, kind ? kBuffDeep : kGlass, 0.5);
}

}  // namespace

void envelope_front(Pen& pen, int kind) {
    flood(pen, kEnvelopeFace, tone_of(kind));
    kind ? by_land(pen) : by_sea(pen);
    const Box corner = kind ? Box{98, 13, 17, 21} : Box{103, 9, 18, 22};
    stamp(pen, corner, kind, kind ? "EBB 3" : "FLOOD 5", tone_of(kind));
    put(pen, {kind ? 15.0 : 10.0, kind ? 19.0 : 13.0}, "Tidewater", sized(kTitle, 13), kInk);
    put(pen, {kind ? 15.0 : 10.0, kind ? 23.6 : 17.6}, kind ? "LETTERS BY HAND" : "BY THE MAIL BOAT", sized(kCaps, 5),
        kBrick);
}

void envelope_flap(Pen& pen, int kind) {
    flood(pen, kFlapFace, kind ? kBuffMid : kGlassSoft);
    const Point c{kM, 22.5};
    for (const double side : {-1.0, 1.0})
        for (int i = -1; i <= 1; ++i)
            wave_rule(pen, {c.x + side * (28 - 1.5 * std::abs(i)), c.y + 3.4 * i}, i ? 14 : 18,
                      kind ? kBuffDeep : kGlassDeep, 0.6);
    seal(pen, c, kind);
}

void envelope_back(Pen& pen, int kind) {
    small_waves(pen, kBackFace, kind, 27);
    put(pen, {kM, 35}, "IF NOT CALLED FOR, BACK TO", sized(kCaps, 5), kInk, Align::centre);
    for (int i = 0; i < 2; ++i) pen.line({kM - 32, 43 + 8.0 * i}, {kM + 32, 43 + 8.0 * i});
    pen.stroke(kInkMid, 0.5);
}

void envelope_side(Pen& pen, int kind) { small_waves(pen, kSideFace, kind, kSideFace.height + 4); }

}  // namespace art
