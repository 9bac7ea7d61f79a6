// SPDX-License-Identifier: GPL-3.0-or-later
// Tags. The hole's place, 8 mm below the middle of the head, stays calm; the title stands below it, where it looks out
// of a pocket.
#include "forms.h"
#include "knots.h"
#include "moon.h"
#include "ornaments.h"
#include "pieces.h"
#include "rope.h"
#include "rose.h"
#include "shells.h"
#include "tides.h"
#include "tower.h"
#include "waves.h"

namespace art {
namespace {

constexpr double kM = kTagFace.width / 2;
constexpr double kTitleLine = 24;

void light(Pen& pen) {
    flood(pen, kTagFace, kGlassPale);
    const Tower tower{.height = 32, .base = 9, .top = 5.6, .daymark = Daymark::spiral, .house = false, .windows = 3};
    const Point foot{kM, 84};
    const Point lamp{foot.x, foot.y - lamp_height(tower)};
    for (int i = 1; i < 5; ++i) pen.circle(lamp, 4 + i * 2.6).stroke(kBuffDeep, 0.3);
    draw_beams(pen, lamp, 29, kBuffDeep, 0.35);
    water(pen, kTagFace, 74, 5, kGlassPale, kGlassSoft, 12);
    draw_rock(pen, foot, 34, 13, kPaper, kInk, 9);
    draw_tower(pen, foot, tower);
    water(pen, kTagFace, 89, 3, kGlassSoft, kGlass, 13);
    heading(pen, {kM, kTitleLine}, "Light seen", "", 19);
}

void anchorage(Pen& pen) {
    const Box title{kM - 25, 17, 50, 17};
    sea_chart(pen, kTagFace, {150, 30}, {}, {title.inset(-1.5), {kM - 11, -4, 22, 22}, {kM - 21, 52, 42, 42}}, 15);
    pen.circle({kM, 8}, 8).fill(kPaper);
    draw_rose(pen, {kM, 73}, 20);
    paper_label(pen, title);
    put(pen, {kM, 27.2}, "Where we lay", sized(kTitle, 15), kInk, Align::centre);
}

void moon_and_tide(Pen& pen) {
    flood(pen, kTagFace, kHaze);
    strewn_stars(pen, {-3, -3, 80, 80}, {{kM - 9, -3, 18, 19}, {kM - 27, 15, 54, 18}, {kM - 22, 34, 44, 44}}, 8, 44);
    const Point moon{kM, 56};
    for (int i = 1; i <= 3; ++i) pen.circle(moon, 13.5 + i * 2.2).stroke(kInkSoft, 0.4);
    draw_moon(pen, moon, 13.5, 0.2, kInkMid, kPaper);
    draw_tide_curve(pen, {-4, 80, 82, 28}, 0, 50, kGlassSoft, kInk, 0.6);
    draw_tide_curve(pen, {-4, 91, 82, 17}, 6, 56, kGlass, kInkMid, 0.4);
    heading(pen, {kM, kTitleLine}, "Moon and tide", "", 18);
}

void found(Pen& pen) {
    flood(pen, kTagFace, kBuff);
    pen.ellipse({kM, 60}, 25, 26).fill(kPaper, true).stroke(kInk, 0.6);
    pen.ellipse({kM, 60}, 23.8, 24.8).stroke(kInk, 0.3);
    scallop(pen, {kM, 61}, 15, kBrickSoft, kInk);
    water(pen, kTagFace, 91, 3, kGlassPale, kGlass, 18);
    heading(pen, {kM, kTitleLine}, "Found", "", 19);
}

void made_fast(Pen& pen) {
    constexpr Colour tone = mix(kBrickSoft, kPaper, 0.55);
    flood(pen, kTagFace, tone);
    rope_frame(pen, {kSafe + 1.4, 37, kTagFace.width - 2 * kSafe - 2.8, 60}, 8, {.thickness = 2.4});
    draw_knot(pen, {kM, 62}, figure_of_eight(), {.rope = {.thickness = 2.2}, .paper = tone, .scale = 4.2});
    caption(pen, {kM, 85}, "and let go again", 10);
    heading(pen, {kM, kTitleLine}, "Made fast", "", 19);
}

void posted(Pen& pen) {
    flood(pen, kTagFace, kGlassSoft);
    stamp(pen, {kM - 25, 37, 33, 42}, 0, "FLOOD 5", kGlassSoft);
    postmark(pen, {kM + 16, 74}, 12, "MAIL BOAT", "ebb 3", "fair");
    water(pen, kTagFace, 92, 3, kGlassPale, kGlass, 27);
    heading(pen, {kM, kTitleLine}, "Posted", "", 19);
}

}  // namespace

const std::array<Draw, kKinds> kTagFronts{light, anchorage, moon_and_tide, found, made_fast, posted};

void tag_back(Pen& pen, int kind) {
    constexpr std::array<Colour, kKinds> kTones{kGlassSoft, kBuffMid, kInkPale, kBuff, kBrickSoft, kGlassSoft};
    constexpr std::array<const char*, kKinds> kHeads{"SEEN FROM",       "SHEET AND BEARING",
                                                     "DAY OF THE MOON", "WHERE, AND WHICH TIDE",
                                                     "WITH WHICH KNOT", "TO WHOM, AND WHAT"};
    const auto k = static_cast<std::size_t>(kind);
    flood(pen, kTagFace, kPaper);
    pen.box({-5, 99, 84, 12}).fill(kTones[k]);
    put(pen, {kM, 20}, kHeads[k], sized(kCaps, 5.8), kInk, Align::centre);
    wave_rule(pen, {kM, 23.6}, 22, kBrick, 0.6);
    blank_field(pen, {9, 33}, 26, "date");
    blank_field(pen, {39, 33}, 26, "hour");
    ruled(pen, {9, 34, kTagFace.width - 18, 42.5});
    kind_motif(pen, {kM, 95.6}, kind, 1, kPaper);
}

}  // namespace art
