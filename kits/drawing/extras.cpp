// SPDX-License-Identifier: GPL-3.0-or-later
#include "extras.h"

#include <array>

#include "chart.h"
#include "flags.h"
#include "forms.h"
#include "leaf.h"
#include "moon.h"
#include "ornaments.h"
#include "places.h"
#include "rope.h"
#include "rose.h"
#include "shells.h"
#include "tides.h"
#include "tower.h"
#include "waves.h"

namespace art {
namespace {

constexpr Box kArea{22, 16, 259, 190};  // all pieces lie within it

void cut_line(Pen& pen) { pen.stroke(kInkMid, 0.4); }

void label(Pen& pen, const Box& b, const char* title, Colour tone, int kind) {
    pen.box(b, 3).fill(tone, true);
    cut_line(pen);
    pen.box(b.inset(2.6), 1.5).fill(kPaper, true).stroke(kInk, 0.5);
    pen.box(b.inset(3.6), 0.8).stroke(kInk, 0.3);
    put(pen, {b.centre().x, b.y + 14}, title, sized(kTitle, 15), kInk, Align::centre);
    wave_rule(pen, {b.centre().x, b.y + 19}, 18, kBrick, 0.6);
    for (int i = 0; i < 2; ++i)
        pen.line({b.x + 9, b.y + 27 + i * 6}, {b.right() - 9, b.y + 27 + i * 6}).stroke(kInkSoft, 0.4);
    if (kind % 2) return;
    for (const double x : {b.x + 9, b.right() - 9}) draw_star(pen, {x, b.y + 9}, 1.6, kBrick);
}

void seal(Pen& pen, Point c, int kind) {
    const std::array<Colour, 6> tones{kGlassPale, kBuff, kPaper, kGlassSoft, kBuffMid, kInkPale};
    pen.circle(c, 17).fill(tones[static_cast<std::size_t>(kind)], true);
    cut_line(pen);
    pen.circle(c, 15.4).stroke(kInk, 0.6);
    pen.circle(c, 14.6).stroke(kInk, 0.3);
    switch (kind) {
        case 0:
            draw_rose(pen, c, 13.6, {.light = kGlassPale, .degrees = false});
            break;
        case 1:
            draw_moon(pen, c, 8.4, 0.2, kInk, kPaper);
            for (int i = 0; i < 12; ++i) draw_star(pen, bearing(c, i * 30, 11.6), i % 3 ? 0.6 : 1.1, kBrick);
            break;
        case 2:
            scallop(pen, {c.x, c.y + 0.4}, 7, kBrickSoft, kInk);
            break;
        case 3:
            draw_beams(pen, {c.x, c.y - 6.6}, 12, kBrick, 0.35);
            draw_tower(pen, {c.x, c.y + 11}, {.height = 15, .base = 5.6, .top = 3.6, .house = false, .windows = 2});
            wave_rule(pen, {c.x, c.y + 11.6}, 13, kInk, 0.5);
            break;
        case 4:
            starfish(pen, c, 10.5, kPaper, kInk);
            break;
        default:
            draw_boat(pen, {c.x, c.y + 5}, 8.4, kBrickSoft, kInk);
            for (int i = 0; i < 2; ++i) wave_rule(pen, {c.x, c.y + 7.6 + i * 2}, 20 - i * 7, kInk, 0.5);
    }
}

void tag(Pen& pen, const Box& b, int number, Colour tone) {
    const double c = 7;
    pen.poly({{b.x + c, b.y},
              {b.right() - c, b.y},
              {b.right(), b.y + c},
              {b.right(), b.bottom()},
              {b.x, b.bottom()},
              {b.x, b.y + c}},
             true);
    pen.fill(tone, true);
    cut_line(pen);
    pen.circle({b.centre().x, b.y + 7}, 3.6).fill(kPaper, true).stroke(kInk, 0.4);
    pen.circle({b.centre().x, b.y + 7}, 2);
    cut_line(pen);
    const Box plate{b.x + 3, b.y + 14, b.w - 6, b.h - 17};
    pen.box(plate, 1).fill(kPaper, true).stroke(kInk, 0.5);
    put(pen, {plate.centre().x, plate.y + 6.5}, number % 2 ? "EBB" : "FLOOD", sized(kCaps, 6), kBrick, Align::centre);
    draw_tide_curve(pen, {plate.x + 3, plate.y + 9, plate.w - 6, 8}, number * 37.0, number * 37.0 + 18, kGlassSoft,
                    kInk, 0.5);
    const std::array<const char*, 3> names{"date", "hour", "at"};
    for (std::size_t i = 0; i < 3; ++i)
        blank_field(pen, {plate.x + 3, plate.y + 24 + 8.0 * static_cast<double>(i)}, plate.w - 6, names[i]);
}

void ticket(Pen& pen, const Box& b, int number, Colour tone) {
    const double bite = 2.6;
    pen.move({b.x + bite, b.y}).to({b.right() - bite, b.y});
    pen.curve({b.right() - bite, b.y + bite}, {b.right() - bite, b.y + bite}, {b.right(), b.y + bite});
    pen.to({b.right(), b.bottom() - bite})
        .curve({b.right() - bite, b.bottom() - bite}, {b.right() - bite, b.bottom() - bite},
               {b.right() - bite, b.bottom()});
    pen.to({b.x + bite, b.bottom()})
        .curve({b.x + bite, b.bottom() - bite}, {b.x + bite, b.bottom() - bite}, {b.x, b.bottom() - bite});
    pen.to({b.x, b.y + bite}).curve({b.x + bite, b.y + bite}, {b.x + bite, b.y + bite}, {b.x + bite, b.y}).close();
    pen.fill(tone, true);
    cut_line(pen);
    pen.box(b.inset(3.4)).stroke(kInk, 0.35);
    pen.line({b.right() - 13.5, b.y + 3.4}, {b.right() - 13.5, b.bottom() - 3.4}).dashed(kInk, 0.4, 0.9, 0.9);
    const double middle = (b.x + b.right() - 12) / 2;
    put(pen, {middle, b.y + 9}, "MAIL BOAT", sized(kCaps, 6), kInk, Align::centre);
    put(pen, {middle, b.y + 15.2}, "one passage", sized(kItalic, 9.5), kBrick, Align::centre);
    put(pen, {middle, b.y + 20}, number % 2 ? "out on the ebb" : "home on the flood", sized(kNote, 6.6), kInk,
        Align::centre);
    const Hold hold(pen);
    pen.shift({b.right() - 7, b.centre().y}).turn(-90);
    put(pen, {0, 1}, "No. 0" + std::to_string(41 + number * 7), sized(kFigures, 7.5), kInk, Align::centre);
}

}  // namespace

void label_sheet(Pen& pen) {
    const std::array<const char*, 4> names{"Logbook", "Letters", "Charts", "Found"};
    const std::array<Colour, 4> tones{kGlassSoft, kBuffMid, kInkPale, kBrickSoft};
    for (std::size_t i = 0; i < 4; ++i)
        label(pen, {kArea.x + 66.3 * static_cast<double>(i), kArea.y, 60, 40}, names[i], tones[i], static_cast<int>(i));
    for (int i = 0; i < 6; ++i) seal(pen, {kArea.x + 17 + 45 * i, kArea.y + 65}, i);
    const std::array<Colour, 6> tags{kBuff, kGlassSoft, kBrickSoft, kBuffMid, kGlassPale, kInkPale};
    for (int i = 0; i < 6; ++i)
        tag(pen, {kArea.x + 44.6 * i, kArea.y + 90, 36, 64}, i, tags[static_cast<std::size_t>(i)]);
    for (int i = 0; i < 5; ++i)
        ticket(pen, {kArea.x + 52.75 * i, kArea.y + 164, 48, 26}, i, i % 2 ? kGlassPale : kBuff);
}

namespace {

void chart_card(Pen& pen, const Box& b, int number, const char* name, Point from) {
    pen.box(b).fill(kPaper, true);
    cut_line(pen);
    const Box map{b.x + 5, b.y + 5, b.w - 10, b.h - 24};
    {
        const Hold hold(pen);
        pen.shift({map.x - from.x, map.y - from.y});
        const Field field = open_banks(29);
        const ChartTone tone{.land = kBuffMid, .water = kWhite};
        const Box window{from.x, from.y, map.w, map.h};
        draw_ground(pen, window, field, tone);
        draw_soundings(pen, window, field, tone, {}, 50u + static_cast<unsigned>(number), 7.5);
    }
    draw_chart_frame(pen, map, kInk, 5);
    put(pen, {b.centre().x, b.bottom() - 10}, name, sized(kText, 11), kInk, Align::centre);
    put(pen, {b.centre().x, b.bottom() - 5.2}, "SHEET " + std::to_string(number + 1), sized(kCaps, 5), kBrick,
        Align::centre);
}

void light_card(Pen& pen, const Box& b, const Tower& tower, const char* name, const char* character, Colour tone) {
    pen.box(b, 2).fill(tone, true);
    cut_line(pen);
    const Hold hold(pen);
    const Box window{b.x + 3.5, b.y + 3.5, b.w - 7, b.h - 21};
    pen.box(window, 1).fill(kPaper);
    {
        const Hold inner(pen);
        pen.box(window, 1).clip();
        const Point foot{window.centre().x - (tower.house ? 3 : 0), window.bottom() - 9};
        for (int i = 1; i < 5; ++i)
            pen.circle({foot.x, foot.y - lamp_height(tower)}, 3 + i * 2.6).stroke(kBuffDeep, 0.3);
        draw_beams(pen, {foot.x, foot.y - lamp_height(tower)}, 30, kBuffDeep, 0.3);
        draw_rock(pen, {window.centre().x, foot.y}, 26, 7, kBuff, kInk, 9);
        draw_tower(pen, foot, tower);
        draw_sea(pen, {window.x - 5, foot.y + 4, window.w + 10, 10},
                 {.far = kGlassPale,
                  .near = kGlassSoft,
                  .line = kInkMid,
                  .rows = 3,
                  .wavelength = 9,
                  .echoes = 3,
                  .seed = 6});
    }
    pen.box(window, 1).stroke(kInk, 0.5);
    put(pen, {b.centre().x, b.bottom() - 10}, name, sized(kText, 9.5), kInk, Align::centre);
    put(pen, {b.centre().x, b.bottom() - 5}, character, {"Vollkorn Italic", 8}, kBrick, Align::centre);
}

void strips(Pen& pen, double x, double y, double w) {
    const auto frame = [&](const Box& b, Colour tone) {
        pen.box(b).fill(tone, true);
        cut_line(pen);
    };
    const Box flags{x, y, w, 24}, waves{x, y + 29, w, 24}, rope{x, y + 58, w, 24};
    frame(flags, kPaper);
    bunting(pen, {x + 3, y + 6}, {x + w - 3, y + 6}, 4.2, 9, 6.4, 0);
    frame(waves, kGlassPale);
    {
        const Hold hold(pen);
        pen.box(waves).clip();
        draw_sea(pen, {x - 5, waves.y + 3, w + 10, 26},
                 {.far = kGlassPale, .near = kGlassSoft, .line = kInk, .rows = 5, .wavelength = 15, .seed = 2});
    }
    pen.box(waves);
    cut_line(pen);
    frame(rope, kBuff);
    rope_frame(pen, rope.inset(3.4), 4, {.thickness = 2});
    put(pen, {rope.centre().x, rope.y + 11.2}, "Keep the light,", sized(kItalic, 11), kInk, Align::centre);
    put(pen, {rope.centre().x, rope.y + 16.4}, "and keep the log.", sized(kItalic, 11), kInk, Align::centre);
}

}  // namespace

void card_sheet(Pen& pen) {
    const std::array<const char*, 4> names{"Pellow Bank", "Gull Stair", "Sallow Reach", "Lanthorn Bay"};
    const std::array<Point, 4> places{Point{52, 86}, Point{128, 78}, Point{205, -10}, Point{200, 135}};
    for (std::size_t i = 0; i < 4; ++i)
        chart_card(pen, {kArea.x + 66.3 * static_cast<double>(i), kArea.y, 60, 98}, static_cast<int>(i), names[i],
                   places[i]);
    const double y = kArea.y + 107;
    const std::array<Tower, 4> towers{
        Tower{.height = 30, .base = 8.6, .top = 5.4, .house = false, .windows = 2},
        Tower{.height = 19, .base = 8, .top = 6, .daymark = Daymark::plain, .mark = kGlassDeep, .windows = 1},
        Tower{.height = 30, .base = 9, .top = 5, .daymark = Daymark::spiral, .house = false, .windows = 2},
        Tower{.height = 27, .base = 9, .top = 5, .daymark = Daymark::lattice, .mark = kInk, .house = false}};
    const std::array<const char*, 4> lights{"Skerrow Point", "Hollin Sound", "Old Nan", "The Ganters"};
    const std::array<const char*, 4> characters{"Fl(3) 20 s", "Oc 8 s", "Fl 10 s", "Q(6) 15 s"};
    const std::array<Colour, 4> tones{kGlassSoft, kBuffMid, kBrickSoft, kInkPale};
    for (std::size_t i = 0; i < 4; ++i)
        light_card(pen, {kArea.x + 44.0 * static_cast<double>(i), y, 38, 82}, towers[i], lights[i], characters[i],
                   tones[i]);
    strips(pen, kArea.x + 176, y, kArea.w - 176);
}

}  // namespace art
