// SPDX-License-Identifier: GPL-3.0-or-later
#include "covers.h"

#include "chance.h"
#include "chart.h"
#include "knots.h"
#include "leaf.h"
#include "ornaments.h"
#include "places.h"
#include "rose.h"
#include "tower.h"
#include "waves.h"

namespace art {
namespace {

constexpr Colour kNightLine = mix(kNight, kInkSoft, 0.45);

void night_lighthouse(Pen& pen, bool banded) {
    const Tower tower{.height = 15.5,
                      .base = 5.4,
                      .top = 3.5,
                      .daymark = banded ? Daymark::bands : Daymark::spiral,
                      .bands = 2,
                      .ink = kNight,
                      .house = false,
                      .windows = 1};
    draw_beams(pen, {0, 11 - lamp_height(tower)}, 12.5, kStraw, 0.4);
    draw_tower(pen, {0, 11}, tower);
    for (int i = 0; i < 3; ++i) wave_rule(pen, {0, 12.2 + i * 1.7}, 21 - i * 6, kGlass, 0.6);
}

void night_moon(Pen& pen) {
    pen.circle({0, 0}, 6.4).fill(kStraw);
    pen.circle({2.7, -1.5}, 5.6).fill(kNight);
    for (int i = 0; i < 3; ++i) draw_star(pen, bearing({2.6, -1.2}, 40 + i * 105, 2.4), 0.9, kPaper);
}

void night_boat(Pen& pen) {
    draw_boat(pen, {0, 2.5}, 6, kPaper, kGlass);
    for (int i = 0; i < 2; ++i) wave_rule(pen, {0, 4.8 + i * 1.8}, 17 - i * 6, kGlass, 0.6);
}

void night_rose(Pen& pen) {
    draw_rose(pen, {0, 0}, 8.5,
              {.ink = kGlass, .light = kNight, .second = kGlassDeep, .degrees = false, .letters = false});
}

}  // namespace

void night_cover(Pen& pen) {
    ground(pen, kNight);
    Chance chance(101);
    const double across = 30.3, down = 31.7;
    for (int row = -1; row < 8; ++row)
        for (int column = -1; column < 11; ++column) {
            const double x = (column + (row % 2 ? 0.5 : 0)) * across, y = (row + 0.5) * down;
            for (int i = 0; i < 4; ++i)
                draw_star(pen, {x + across / 2 + chance.between(-2, 2), y - 12 + 8 * i + chance.between(-2.5, 2.5)},
                          chance.between(0.5, 1.3), i % 2 ? kNightLine : kBuffMid);
            const Hold hold(pen);
            const int kind = (column + row * 2 + 60) % 6;
            pen.shift({x, y}).turn(90.0 * chance.below(4));
            if (kind == 0 || kind == 3)
                night_lighthouse(pen, kind == 0);
            else if (kind == 1 || kind == 5)
                night_moon(pen);
            else if (kind == 2)
                night_boat(pen);
            else
                night_rose(pen);
        }
}

void chart_cover(Pen& pen) {
    const ChartTone tone{.land = kBuffMid, .water = kBuff};
    const Field field = open_banks(29);
    draw_ground(pen, kCanvas.inset(-2), field, tone);
    {
        const Hold hold(pen);
        for (const Point p : {Point{48, 182}, Point{222, 62}}) rhumbs(pen, p, 400, mix(kBrickSoft, kBuff, 0.35), 0.3);
    }
    draw_soundings(
        pen, kCanvas.inset(-2), field, tone,
        {{24, 158, 48, 48}, {198, 38, 48, 48}, {222, 117, 6, 6}, {259, 157, 6, 6}, {27, 57, 6, 6}, {117, 187, 6, 6}},
        31, 8.5);
    for (const Point p : {Point{48, 182}, Point{222, 62}}) draw_rose(pen, p, 22, {.light = kBuff});
    for (const Point p : {Point{225, 120}, Point{262, 160}, Point{30, 60}, Point{120, 190}})
        anchor_mark(pen, p, 2.4, kInkMid);
}

void wave_cover(Pen& pen) {
    ground(pen, kGlassSoft);
    Chance chance(17);
    const double r = 15.15;
    int row = 0;
    for (double y = -r; y < kCanvasHeight + 2 * r; y += r / 2, ++row)
        for (double x = -r + (row % 2) * r; x < kCanvasWidth + 2 * r; x += 2 * r) {
            const int kind = chance.below(5);
            const Colour fills[] = {kGlassPale, kGlassSoft, kGlass, kGlassPale, kBuff};
            pen.circle({x, y + r}, r).fill(fills[kind], true).stroke(kGlassDeep, 0.9);
            for (int i = 1; i < 6; ++i)
                pen.circle({x, y + r}, r * (1 - i * 0.165)).stroke(kGlassDeep, i % 2 ? 0.35 : 0.6);
        }
}

namespace {

// Two sets of ropes on the bias, over and under in turn.
void lattice(Pen& pen, double step, Colour paper) {
    const Rope falling{.thickness = 3.4, .fill = kBuffMid, .line = kNight, .points = 0.5};
    const Rope rising{.thickness = 3.4, .fill = kGlassSoft, .line = kNight, .points = 0.5};
    const double reach = 340;
    const auto down = [&](int i) { return Path{{i * step - reach, -reach}, {i * step + reach, reach}}; };
    const auto up = [&](int j) { return Path{{j * step - reach, reach}, {j * step + reach, -reach}}; };
    for (int i = -9; i < 18; ++i) draw_rope(pen, down(i), falling);
    for (int j = -2; j < 22; ++j) draw_rope_above(pen, up(j), rising, paper, 0, length_of(up(j)));
    for (int i = -9; i < 18; ++i)
        for (int j = -2; j < 22; ++j) {
            // down(i): x - y = i step; up(j): x + y = j step.
            const Point at{(i + j) * step / 2, (j - i) * step / 2};
            if ((i + j) % 2 != 0 || !kCanvas.holds(at, 8)) continue;
            const double along = length(at - down(i).front());
            draw_rope_above(pen, down(i), falling, paper, along - 3.6, along + 3.6);
        }
}

}  // namespace

void knot_cover(Pen& pen) {
    ground(pen, kBrick);
    const double step = 43.3;
    lattice(pen, step, kBrick);
    const Knot knots[] = {reef_knot(), figure_of_eight()};
    for (int i = -9; i < 18; ++i)
        for (int j = -2; j < 22; ++j) {
            const Point at{(i + j + 1) * step / 2, (j - i) * step / 2};
            if (!kCanvas.holds(at, 30)) continue;
            const Hold hold(pen);
            pen.shift(at).turn((i + j) % 2 ? 0 : 90);
            draw_knot(pen, {0, 0}, knots[static_cast<std::size_t>((i + 20) % 2)],
                      {.rope = {.thickness = 1.7, .fill = kBuff, .line = kNight, .points = 0.4},
                       .paper = kBrick,
                       .whipping = kStraw,
                       .scale = 2.3});
        }
}

void lining_paper(Pen& pen) {
    ground(pen, kBuff);
    int row = 0;
    for (double y = 4; y < kCanvasHeight + 8; y += 8.2, ++row)
        for (double x = row % 2 ? 0 : 10.1; x < kCanvasWidth + 12; x += 20.2) {
            wave_rule(pen, {x, y}, 12.6, kBuffDeep, 0.7);
            pen.circle({x + 10.1, y - 0.3}, 0.55).fill(row % 4 == 1 ? kBrickSoft : kBuffDeep);
        }
}

}  // namespace art
