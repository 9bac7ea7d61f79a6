// SPDX-License-Identifier: GPL-3.0-or-later
// Fronts of the three pockets, side by side as one looks at the open piece, and what lies behind them. Nothing matters
// in the upper 9 mm: things are pushed in there, and a thumb may be cut out.
#include "flags.h"
#include "knots.h"
#include "moon.h"
#include "ornaments.h"
#include "pieces.h"
#include "rope.h"
#include "shells.h"
#include "tides.h"
#include "tower.h"
#include "waves.h"

namespace art {
namespace {

using Words = std::array<const char*, 3>;

double middle_of(int i) { return kPocketFronts[static_cast<std::size_t>(i)].centre().x; }

void names(Pen& pen, const Words& words, double y) {
    for (int i = 0; i < 3; ++i)
        put(pen, {middle_of(i), y}, words[static_cast<std::size_t>(i)], sized(kTitle, 16), kInk, Align::centre);
}

void lights(Pen& pen) {
    flood(pen, kStripFace, kGlassPale);
    water(pen, kStripFace, 42, 4, kGlassPale, kGlassSoft, 31);
    const std::array<Tower, 3> towers{
        Tower{.height = 19, .base = 6, .top = 4, .daymark = Daymark::spiral, .house = false, .windows = 2},
        Tower{.height = 14, .base = 6, .top = 4.4, .daymark = Daymark::plain, .mark = kGlassDeep, .windows = 1},
        Tower{.height = 20, .base = 6.4, .top = 3.8, .daymark = Daymark::lattice, .mark = kInk, .house = false}};
    for (int i = 0; i < 3; ++i) {
        const Tower& tower = towers[static_cast<std::size_t>(i)];
        const double x = middle_of(i) + 22;
        draw_beams(pen, {x, 49 - lamp_height(tower)}, 12, kBuffDeep, 0.35);
        draw_rock(pen, {x + (tower.house ? 3 : 0), 49}, 26, 8, kPaper, kInk, 70u + static_cast<unsigned>(i));
        draw_tower(pen, {x, 49}, tower);
    }
    water(pen, kStripFace, 51, 3, kGlassSoft, kGlass, 33);
    const Words words{"Out at sea", "On the rocks", "Up the coast"};
    for (int i = 0; i < 3; ++i) {
        const double x = middle_of(i) - 10;
        put(pen, {x, 26}, words[static_cast<std::size_t>(i)], sized(kTitle, 15), kInk, Align::centre);
        wave_rule(pen, {x, 31}, 18, kBrick, 0.6);
    }
}

void charts(Pen& pen) {
    std::vector<Box> free;
    for (int i = 0; i < 3; ++i) free.push_back({middle_of(i) - 26, 21, 52, 26});
    sea_chart(pen, kStripFace, {30, 130}, {}, free, 8);
    const Words words{"Islands", "Soundings", "Passages"};
    const Words notes{"those with a name", "by lead and by luck", "made or meant"};
    for (int i = 0; i < 3; ++i) {
        const double x = middle_of(i);
        paper_label(pen, {x - 24, 23, 48, 22});
        put(pen, {x, 33}, words[static_cast<std::size_t>(i)], sized(kTitle, 16), kInk, Align::centre);
        caption(pen, {x, 39.6}, notes[static_cast<std::size_t>(i)], 9.5);
    }
}

void moons(Pen& pen) {
    flood(pen, kStripFace, kHaze);
    std::vector<Box> free;
    for (int i = 0; i < 3; ++i) free.push_back({middle_of(i) - 24, 10, 48, 30});
    strewn_stars(pen, {-3, -3, 258, 46}, free, 8, 43);
    const std::array<double, 3> ages{0.2, 0.5, 0.8};
    const Words words{"Waxing", "Full", "Waning"};
    draw_tide_curve(pen, {-4, 42, 260, 26}, 0, 177, kGlassSoft, kInk, 0.6);
    for (int i = 0; i < 3; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const double wide = width_of(pen, words[k], sized(kTitle, 16)), x = middle_of(i) - (wide + 20) / 2;
        draw_moon(pen, {x + 8, 25}, 8, ages[k], kInk, kPaper);
        put(pen, {x + 20, 27.4}, words[k], sized(kTitle, 16), kInk);
    }
}

void shells(Pen& pen) {
    flood(pen, kStripFace, kBuff);
    for (int k = -1; k < 11; ++k)
        for (int i = 0; i < 2; ++i) wave_rule(pen, {k * 25.0 + (i ? 12.5 : 0), 47 + i * 3.4}, 14, kBuffDeep, 0.45);
    water(pen, kStripFace, 53, 2, kGlassPale, kGlass, 16);
    using Shell = void (*)(Pen&, Point, double, Colour, Colour);
    const std::array<Shell, 3> finds{scallop, starfish, whelk};
    const std::array<Colour, 3> fills{kBrickSoft, kPaper, kGlassSoft};
    const Words words{"Found", "Kept", "Put back"};
    for (int i = 0; i < 3; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const double wide = width_of(pen, words[k], sized(kTitle, 17)), x = middle_of(i) - (wide + 27) / 2;
        finds[k](pen, {x + 10, 29}, i == 0 ? 9.0 : 11.0, fills[k], kInk);
        put(pen, {x + 27, 31.6}, words[k], sized(kTitle, 17), kInk);
    }
}

void knots(Pen& pen) {
    constexpr Colour tone = mix(kBrickSoft, kPaper, 0.55);
    flood(pen, kStripFace, tone);
    draw_rope(pen, {{-6, 53}, {260, 53}}, {.thickness = 3});
    const std::array<Knot, 3> tied{thumb_knot(), figure_of_eight(), sheet_bend()};
    const std::array<double, 3> scales{3.6, 3.3, 3.5}, heights{36, 35.4, 36};
    for (int i = 0; i < 3; ++i) {
        const auto k = static_cast<std::size_t>(i);
        draw_knot(pen, {middle_of(i), heights[k]}, tied[k],
                  {.rope = {.thickness = 1.9}, .paper = tone, .scale = scales[k]});
    }
    names(pen, {"Tried", "Learned", "Trusted"}, 21);
}

void letters(Pen& pen) {
    flood(pen, kStripFace, kGlassSoft);
    for (int i = 0; i < 3; ++i) {
        const Box& panel = kPocketFronts[static_cast<std::size_t>(i)];
        bunting(pen, {panel.x + kSafe + 1, 35}, {panel.right() - kSafe - 1, 35}, 3.6, 7, 5.6, 1 + 8 * i);
    }
    water(pen, kStripFace, 50, 3, kGlassPale, kGlass, 19);
    names(pen, {"Come in", "To answer", "To send"}, 24);
    for (int i = 0; i < 3; ++i) wave_rule(pen, {middle_of(i), 29}, 18, kBrick, 0.6);
}

}  // namespace

const std::array<Draw, kKinds> kPocketStrips{lights, charts, moons, shells, knots, letters};

void pocket_inside(Pen& pen) {
    flood(pen, kPocketFace, kPaper);
    int row = 0;
    for (double y = 4; y < kPocketFace.height + 14; y += 10, ++row)
        for (int k = -1; k < 15; ++k) {
            const double x = k * 20.0 + (row % 2 ? 5.25 : 15.25);
            wave_rule(pen, {x, y}, 12.6, kGlass, 0.6);
            const int turn = (k + 2 * row + 40) % 5;
            if (turn == 0 && row % 2)
                draw_boat(pen, {x + 10, y - 0.2}, 2.5, kBuffMid, kInkSoft);
            else if (turn == 0)
                draw_gull(pen, {x + 10, y - 0.4}, 5.2, kInkSoft);
            else
                pen.circle({x + 10, y - 0.3}, 0.5).fill(row % 3 == 1 ? kBrickSoft : kGlass);
        }
}

}  // namespace art
