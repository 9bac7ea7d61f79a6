// SPDX-License-Identifier: GPL-3.0-or-later
// Outsides of the pockets that fold in three. Closed, the middle panel lies in front and the left one behind; the right
// one shows while it is opened. A title stands in front, and each panel is a picture for itself.
#include "flags.h"
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

const Box& left = kOutside[0];
const Box& middle = kOutside[1];
const Box& right = kOutside[2];
const double kL = left.centre().x, kM = middle.centre().x, kR = right.centre().x;

void list_of_lights(Pen& pen, const Box& b) {
    const std::array<const char*, 4> names{"Skerrow Point", "Hollin Sound", "Old Nan", "Ravel Sands"};
    const std::array<const char*, 4> characters{"Fl(3) 20 s", "Oc 8 s", "Fl 10 s", "Fl(2) 12 s"};
    put(pen, {b.centre().x, b.y}, "LIGHTS IN SIGHT", kCaps, kInk, Align::centre);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const double y = b.y + 10 + 8.4 * static_cast<double>(i);
        put(pen, {b.x, y}, names[i], sized(kText, 10.5), kInk);
        put(pen, {b.right(), y}, characters[i], {"Vollkorn Italic", 9.5}, kBrick, Align::right);
        pen.line({b.x, y + 2.4}, {b.right(), y + 2.4}).stroke(kInkSoft, 0.4);
    }
}

void lights(Pen& pen) {
    flood(pen, kPocketFace, kGlassPale);
    const Tower tower{.height = 42, .base = 11.5, .top = 7.4};
    const Point foot{kM - 4.5, 98};
    const Point lamp{foot.x, foot.y - lamp_height(tower)};
    draw_beams(pen, lamp, 29, kBuffDeep, 0.4);
    draw_moon(pen, {kL - 14, 27}, 9, 0.36, kInkSoft, kPaper);
    draw_gull(pen, {kL + 12, 24}, 11, kInkMid, -8);
    draw_gull(pen, {kL + 21, 31}, 7.5, kInkMid, 6);
    water(pen, kPocketFace, 87, 5, kGlassPale, kGlassSoft, 11);
    draw_boat(pen, {kL, 101}, 11, kBuffMid, kInk);
    draw_buoy(pen, {kR - 13, 101}, 1.35, 0);
    draw_buoy(pen, {kR + 15, 98}, 1.0, 5);
    draw_rock(pen, {kM, foot.y}, 50, 15, kPaper, kInk, 3);
    draw_tower(pen, foot, tower);
    water(pen, kPocketFace, 103, 3, kGlassSoft, kGlass, 21);
    heading(pen, {kM, 20}, "Lights", "seen, and by whom");
    put(pen, {kL, 55}, "Keep the light,", {"Vollkorn Italic", 16, 0, true}, kInk, Align::centre);
    put(pen, {kL, 63.5}, "and keep the log.", {"Vollkorn Italic", 16, 0, true}, kInk, Align::centre);
    list_of_lights(pen, {right.x + 10, 20, right.w - 20, 40});
}

void charts(Pen& pen) {
    const Box title{kM - 30, 13, 60, 31}, card{kR - 29, 62, 58, 32}, scale{kR - 29, 98, 58, 15};
    const Box ground_label{kL - 25, 72, 50, 14}, light_label{kR + 7, 38, 26, 14};
    const Point rose{kM, 80}, badge{kL, 42};
    sea_chart(pen, kPocketFace, {30, -15}, {},
              {title.inset(-2), card.inset(-2), scale.inset(-2), ground_label.inset(-2), light_label,
               Box{rose.x - 27, rose.y - 27, 54, 54}, Box{badge.x - 22, badge.y - 22, 44, 44}},
              31);
    {
        const Hold hold(pen);
        pen.box(middle).clip();
        rhumbs(pen, rose, 120, mix(kBrickSoft, kPaper, 0.35), 0.3);
    }
    draw_rose(pen, rose, 26);
    paper_label(pen, title);
    heading(pen, {kM, 26}, "Charts", "soundings in metres, north at the head", 20);
    pen.circle(badge, 21).fill(kPaper, true).stroke(kInk, 0.7);
    pen.circle(badge, 19.6).stroke(kInk, 0.3);
    anchor_mark(pen, badge, 12, kInk);
    paper_label(pen, ground_label);
    put(pen, {kL, 80.6}, "Good holding ground", sized(kItalic, 12), kInk, Align::centre);
    light_mark(pen, {kR + 5, 47}, 2.4);
    put(pen, {kR + 15, 47.4}, "Fl 10 s", {"Vollkorn Italic", 8}, kBrick);
    put(pen, {kR - 3, 27}, "Old Nan", sized(kItalic, 11), kInk, Align::centre);
    paper_label(pen, card);
    put(pen, {kR, 71.4}, "Passages", sized(kTitle, 15), kInk, Align::centre);
    ruled(pen, {card.x + 7, 73, card.w - 14, 15}, 7);
    paper_label(pen, scale);
    scale_bar(pen, {kR - 22, scale.y + 6.5}, 44, 4, "miles, more or less");
}

void her_month(Pen& pen, Point c, double radius) {
    pen.circle(c, radius + 6.6).stroke(kInkMid, 0.6);
    pen.circle(c, radius + 5.6).stroke(kInkMid, 0.3);
    for (int i = 0; i < 8; ++i) draw_moon(pen, bearing(c, i * 45, radius), i % 2 ? 3.6 : 4.6, i / 8.0, kInk, kPaper);
    put(pen, {c.x, c.y - 1}, "the moon", sized(kItalic, 11), kInk, Align::centre);
    put(pen, {c.x, c.y + 4.4}, "in her month", sized(kItalic, 11), kInk, Align::centre);
}

void four_tides(Pen& pen, const Box& b) {
    const std::array<const char*, 4> moons{"new", "first quarter", "full", "last quarter"};
    for (int i = 0; i < 4; ++i) {
        const double y = b.y + b.h * (i + 0.5) / 4;
        draw_moon(pen, {b.x + 7, y}, 6, i / 4.0, kInk, kPaper);
        put(pen, {b.x + 18, y + 0.4}, i % 2 ? "Neaps" : "Springs", sized(kText, 12), kInk);
        put(pen, {b.x + 18, y + 4.6}, moons[static_cast<std::size_t>(i)], sized(kNote, 8), kBrick);
    }
}

void moons(Pen& pen) {
    flood(pen, kPocketFace, kHaze);
    const Point moon{kM, 62};
    strewn_stars(pen, {-3, -3, 258, 96},
                 {{kL - 28, 14, 56, 66}, {kM - 26, 8, 52, 26}, {kM - 27, 35, 54, 54}, {kR - 26, 8, 52, 78}}, 8.6, 41);
    for (int i = 1; i <= 4; ++i) pen.circle(moon, 16 + i * 2.4).stroke(kInkSoft, 0.35);
    draw_moon(pen, moon, 16, 0.42, kInkMid, kPaper);
    heading(pen, {kM, 20}, "Moons", "and the tides they raise");
    her_month(pen, {kL, 48}, 20);
    four_tides(pen, {kR - 23, 12, 50, 72});
    draw_tide_curve(pen, {-4, 97, 260, 27}, 0, 177, kGlassSoft, kInk, 0.6);
    draw_tide_curve(pen, {-4, 107, 260, 17}, 6, 183, kGlass, kInkMid, 0.4);
}

using Shell = void (*)(Pen&, Point, double, Colour, Colour);

struct Find {
    Shell draw;
    const char* name;
    Colour fill;
};

void four_finds(Pen& pen, double x, const std::array<Find, 4>& finds) {
    for (int i = 0; i < 4; ++i) {
        const Find& find = finds[static_cast<std::size_t>(i)];
        const Point at{x + (i % 2 ? 17.5 : -17.5), i < 2 ? 26.0 : 68.0};
        find.draw(pen, at, 11.4, find.fill, kInk);
        caption(pen, {at.x, at.y + 19}, find.name);
    }
}

void shells(Pen& pen) {
    flood(pen, kPocketFace, kBuff);
    for (int i = 0; i < 4; ++i)
        for (int k = -1; k < 11; ++k)
            wave_rule(pen, {k * 25.0 + (i % 2 ? 12.5 : 0), 95 + i * 3.6}, 15 - i, kBuffDeep, 0.45);
    water(pen, kPocketFace, 105, 3, kGlassPale, kGlass, 15);
    four_finds(pen, kL,
               {Find{starfish, "starfish", kBrickSoft}, Find{limpet, "limpet", kGlassSoft},
                Find{auger_shell, "auger", kPaper}, Find{razor, "razor", kGlassSoft}});
    four_finds(pen, kR,
               {Find{whelk, "whelk", kPaper}, Find{mussel, "mussel", kInkPale}, Find{urchin, "urchin", kBrickSoft},
                Find{weed, "wrack", kGlass}});
    pen.ellipse({kM, 64}, 27, 26).fill(kPaper, true).stroke(kInk, 0.6);
    pen.ellipse({kM, 64}, 25.6, 24.6).stroke(kInk, 0.3);
    scallop(pen, {kM, 65}, 17, kBrickSoft, kInk);
    heading(pen, {kM, 20}, "Shells", "found between the tide marks");
}

void framed_knot(Pen& pen, const Box& panel, const Knot& knot, double y, double scale, Colour paper) {
    rope_frame(pen, panel.inset(kSafe + 1.6), 9, {.thickness = 2.8});
    draw_knot(pen, {panel.centre().x, y}, knot, {.rope = {.thickness = 0.5 * scale}, .paper = paper, .scale = scale});
}

void knots(Pen& pen) {
    constexpr Colour tone = mix(kBrickSoft, kPaper, 0.55);
    flood(pen, kPocketFace, tone);
    framed_knot(pen, left, figure_of_eight(), 52, 4.7, tone);
    framed_knot(pen, middle, reef_knot(), 66, 5, tone);
    framed_knot(pen, right, sheet_bend(), 52, 4.6, tone);
    heading(pen, {kM, 30}, "Knots", "tied, and to be tied");
    put(pen, {kM, 91}, "Reef knot", sized(kText, 12), kInk, Align::centre);
    caption(pen, {kM, 96.4}, "ties two ends of one rope");
    put(pen, {kL, 84}, "Figure of eight", sized(kText, 12), kInk, Align::centre);
    caption(pen, {kL, 89.4}, "stops a rope at a hole");
    put(pen, {kR, 84}, "Sheet bend", sized(kText, 12), kInk, Align::centre);
    caption(pen, {kR, 89.4}, "joins a thin rope to a thick one");
}

void mail_card(Pen& pen, const Box& b) {
    paper_label(pen, b);
    put(pen, {b.x + 5, b.y + 8}, "TO BE CALLED FOR", sized(kCaps, 5.4), kBrick);
    for (int i = 0; i < 4; ++i)
        pen.line({b.x + 5, b.y + 18 + 7.0 * i}, {b.right() - (i < 2 ? 26 : 5), b.y + 18 + 7.0 * i})
            .stroke(kInkSoft, 0.4);
    stamp(pen, {b.right() - 20, b.y + 5, 15, 19}, 1, "EBB 3", kPaper);
}

void letters(Pen& pen) {
    flood(pen, kPocketFace, kGlassSoft);
    int first = 2;
    for (const Box& panel : kOutside) {
        bunting(pen, {panel.x + kSafe + 1, 8}, {panel.right() - kSafe - 1, 8}, 4.5, 7, 6.2, first);
        first += 7;
    }
    heading(pen, {kM, 36}, "Letters", "by the mail boat");
    stamp(pen, {kM - 15, 53, 30, 37}, 0, "FLOOD 5", kGlassSoft);
    mail_card(pen, {kL - 31, 32, 62, 46});
    for (int i = 0; i < 4; ++i) wave_rule(pen, {kR + 15, 46 + i * 4.2}, 34, kInkMid, 0.6);
    pen.circle({kR - 12, 52}, 18).fill(kGlassSoft);
    postmark(pen, {kR - 12, 52}, 17, "SKERROW POINT", "out", "on the ebb");
    caption(pen, {kR, 82}, "No wind, no letters.", 12);
    water(pen, kPocketFace, 98, 4, kGlassPale, kGlass, 9);
}

}  // namespace

const std::array<Draw, kKinds> kPocketOutsides{lights, charts, moons, shells, knots, letters};

}  // namespace art
