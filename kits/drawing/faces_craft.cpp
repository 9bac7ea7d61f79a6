// SPDX-License-Identifier: GPL-3.0-or-later
// Faces on ropework, the log line, weather, sea and shore.
#include <array>

#include "faces.h"
#include "forms.h"
#include "knots.h"
#include "leaf.h"
#include "logline.h"
#include "ornaments.h"
#include "rope.h"
#include "shells.h"
#include "waves.h"

namespace art {

void knot_steps_face(Pen& pen) {
    ground(pen, kPaper);
    put(pen, {kLeft.centre().x, 27}, "Figure of eight", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {kLeft.centre().x, 35}, "a stopper that never jams", sized(kItalic, 9.5), kInkMid, Align::centre);
    const std::array<const char*, 4> steps{"Lay a loop over the standing part.", "Lead the end behind it,",
                                           "then up through the loop,", "and draw it snug."};
    const std::array<double, 4> shown{0.58, 0.715, 0.875, 1.0};
    for (std::size_t i = 0; i < 4; ++i) {
        const double y = 62 + 40.0 * static_cast<double>(i);
        pen.circle({kLeft.x + 8, y - 9}, 3.6).stroke(kBrick, 0.7);
        put(pen, {kLeft.x + 8, y - 7.5}, std::to_string(i + 1), {"Vollkorn SemiBold", 10}, kBrick, Align::centre);
        draw_knot(pen, {kLeft.centre().x + 3, y}, figure_of_eight(),
                  {.rope = {.thickness = 3.2}, .scale = 7.6, .shown = shown[i]});
        put(pen, {kLeft.centre().x + 3, y + 16.5}, steps[i], sized(kItalic, 9), kInk, Align::centre);
    }
    rope_frame(pen, kRight.inset(1.5), 9, {.thickness = 2.8});
    put(pen, {kRight.centre().x, 37}, "Ropework", sized(kTitle, 17), kInk, Align::centre);
    wave_rule(pen, {kRight.centre().x, 43}, 24, kBrick, 0.7);
    ruled(pen, {kRight.x + 11, 45, kRight.w - 22, 147});
}

void knot_plate_face(Pen& pen) {
    put(pen, {kLeft.centre().x, 27}, "Four knots to know", sized(kTitle, 22), kInk, Align::centre);
    const std::array<Knot, 4> knots{thumb_knot(), reef_knot(), sheet_bend(), figure_of_eight()};
    const std::array<const char*, 4> uses{"keeps an end from running out", "ties two ends of one rope",
                                          "joins a thin rope to a thick one", "stops a rope at a hole"};
    for (std::size_t i = 0; i < 4; ++i) {
        const double y = 54 + 42.5 * static_cast<double>(i);
        draw_knot(pen, {kLeft.centre().x, y}, knots[i], {.rope = {.thickness = 2.9}, .paper = kWhite, .scale = 6});
        const double base = y + (i == 1 ? 16.5 : i == 3 ? 17 : 20.5);
        const double wide = width_of(pen, knots[i].name, sized(kText, 11));
        const double both = wide + 3 + width_of(pen, uses[i], kNote);
        put(pen, {kLeft.centre().x - both / 2, base}, knots[i].name, sized(kText, 11), kInk);
        put(pen, {kLeft.centre().x - both / 2 + wide + 3, base}, uses[i], kNote, kInkMid);
    }
    const Rope rope{.thickness = 2.6};
    for (const double y : {kRight.y + 3, kRight.bottom() - 3}) {
        draw_rope(pen, {{kRight.x, y}, {kRight.right(), y}}, rope);
        for (const double x : {kRight.x, kRight.right() - 2}) pen.box({x, y - 1.4, 2, 2.8}).fill(kBrick);
    }
    dotted(pen, {kRight.x, kRight.y + 8, kRight.w, kRight.h - 16}, 5, kInkMid);
}

void log_line_face(Pen& pen) {
    ground(pen, kBuff);
    const double middle = kLeft.centre().x;
    put(pen, {middle, 27}, "The log line", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {middle, 35}, "how fast, how far", sized(kItalic, 9.5), kInkMid, Align::centre);
    draw_log_line(pen, {kLeft.x, 42, kLeft.w, 112});
    paragraph(pen, {kLeft.x + 8, 164}, kLeft.w - 16,
              "Throw the chip astern and turn the glass. When the sand has run, stop the line and count the "
              "knots that passed through your hand: as many knots, as many miles in the hour.",
              sized(kItalic, 10), kInk, 15, Align::centre);
    page_foot(pen, kLeft, "ONE GLASS, ONE COUNT");
    pen.box({kRight.x - 4, kRight.y - 3, kRight.w + 8, kRight.h + 6}, 3).fill(kPaper);
    const double top = page_head(pen, kRight, "Log of the day");
    blank_field(pen, {kRight.x, top + 4}, 56, "date");
    blank_field(pen, {kRight.x + 61, top + 4}, 56, "from, to");
    const Box table{kRight.x, top + 10, kRight.w, 118};
    const double row =
        blank_table(pen, table, {{"HOUR", 1}, {"KNOTS", 1}, {"COURSE", 1.3}, {"WIND", 1.3}, {"REMARKS", 4}}, 12, kBuff);
    for (int i = 0; i < 12; ++i)
        put(pen, {table.x + table.w / 17.2, table.y + 7 + row * (i + 0.5) + 1.1}, std::to_string(i + 1), kFigures,
            kInkMid, Align::centre);
    ruled(pen, {kRight.x, table.bottom() + 3, kRight.w, 35});
}

void weather_face(Pen& pen) {
    const double top = page_head(pen, kLeft, "Weather log", "wind, sea and glass");
    const std::vector<Column> left{{"DATE", 1.3}, {"HOUR", 1.1},  {"WIND", 1.2},  {"FORCE", 1.1},
                                   {"SEA", 1},    {"GLASS", 1.3}, {"WARMTH", 1.3}};
    const double h = kLeft.bottom() - 8 - top;
    const double row = blank_table(pen, {kLeft.x, top, kLeft.w, h}, left, 18);
    const double centre = kLeft.x + kLeft.w * 3.0 / 8.3;
    for (int i = 0; i < 18; ++i) {
        const Point c{centre, top + 7 + row * (i + 0.5)};
        pen.circle(c, 2.6).stroke(kInkSoft, 0.4);
        for (int k = 0; k < 8; ++k)
            pen.line(bearing(c, k * 45, 2.6), bearing(c, k * 45, k % 2 ? 3.0 : 3.4)).stroke(kInkSoft, 0.4);
    }
    page_head(pen, kRight, "Sky and remarks");
    blank_table(pen, {kRight.x, top, kRight.w, h}, {{"SKY", 1.4}, {"WHAT WE SAW", 6}}, 18);
    for (int i = 0; i < 18; ++i)
        for (int k = 0; k < 3; ++k) {
            const Point c{kRight.x + 4.2 + k * 6.4, top + 7 + row * (i + 0.5)};
            pen.circle(c, 2.1).stroke(kInkSoft, 0.4);
            if (k > 0) pen.move(c).arc(c, 2.1, 0, k == 1 ? 180 : 359.9).close().fill(k == 1 ? kInkPale : kInkSoft);
        }
    page_foot(pen, kLeft, "MORNINGS AND EVENINGS");
    page_foot(pen, kRight, "WHAT THE GULLS KNEW FIRST");
}

void open_sea_face(Pen& pen) {
    ground(pen, kPaper);
    for (const Box& page : {kLeft, kRight}) ruled(pen, {page.x, page.y + 5, page.w, 98});
    draw_boat(pen, {222, 143.2}, 9, kBrickSoft, kInk);
    draw_gull(pen, {84, 132}, 11, kInkMid, -8);
    draw_gull(pen, {97, 138}, 7, kInkMid, 5);
    draw_sea(pen, {-5, 142, 313, 85},
             {.far = kPaper, .near = kGlassSoft, .line = kInkMid, .rows = 9, .wavelength = 30, .echoes = 5, .seed = 9});
}

void sea_state_face(Pen& pen) {
    ground(pen, kPaper);
    put(pen, {kLeft.centre().x, 27}, "Seven seas", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {kLeft.centre().x, 35}, "from glass to green water", sized(kItalic, 9.5), kInkMid, Align::centre);
    const std::array<const char*, 7> names{"Glass", "Ripple", "Lop", "Chop", "Running", "Steep", "Green"};
    for (int i = 0; i < 7; ++i) {
        const Box band{kLeft.x, 43 + 23.2 * i, 96, 19};
        const Hold hold(pen);
        put(pen, {kLeft.right(), band.y + 9.5}, names[static_cast<std::size_t>(i)], sized(kItalic, 11), kInk,
            Align::right);
        put(pen, {kLeft.right(), band.y + 14.5}, "SEA " + std::to_string(i), sized(kCaps, 5), kBrick, Align::right);
        pen.box(band).clip();
        pen.box(band).fill(kGlassPale);
        const double rise = 2.5 - i * 0.2;
        draw_sea(pen, {band.x - 5, band.y + 4 + rise, band.w + 10, band.h - 2},
                 {.far = kGlassPale,
                  .near = kGlassSoft,
                  .line = kInk,
                  .points = 0.45,
                  .rows = i < 2 ? 6 : 4,
                  .wavelength = 7.0 + i * 5,
                  .steepness = 0.12 + i * 0.13,
                  .echoes = i < 1 ? 0 : 2 + i / 2,
                  .seed = 70u + static_cast<unsigned>(i)});
        pen.box(band).stroke(kInk, 0.8);
    }
    const double top = page_head(pen, kRight, "The sea today", "a number and a word");
    for (int i = 0; i < 7; ++i) {
        const double y = top + 24.2 * i;
        pen.circle({kRight.x + 6, y + 8}, 5.4).stroke(kInkMid, 0.5);
        pen.circle({kRight.x + 6, y + 8}, 4.7).stroke(kInkSoft, 0.3);
        ruled(pen, {kRight.x + 17, y - 0.5, kRight.w - 17, 21});
    }
}

void shell_face(Pen& pen) {
    ground(pen, kPaper);
    put(pen, {kLeft.centre().x, 27}, "Strand line", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {kLeft.centre().x, 35}, "found between the tide marks", sized(kItalic, 9.5), kInkMid, Align::centre);
    using Shell = void (*)(Pen&, Point, double, Colour, Colour);
    const std::array<Shell, 9> shells{scallop, whelk, razor, starfish, auger_shell, mussel, limpet, urchin, weed};
    const std::array<const char*, 9> names{"scallop", "whelk",  "razor",  "starfish", "auger",
                                           "mussel",  "limpet", "urchin", "wrack"};
    const std::array<Colour, 9> fills{kBrickSoft, kBuffMid,   kGlassSoft, kBuffMid, kBuff,
                                      kInkPale,   kGlassSoft, kBrickSoft, kGlass};
    for (int i = 0; i < 9; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const Point at{kLeft.x + 20 + 38.5 * (i % 3), 67 + 54.0 * (i / 3)};
        shells[k](pen, at, i == 0 ? 11.0 : 13.5, fills[k], kInk);
        put(pen, {at.x, at.y + 21.5}, names[k], sized(kItalic, 9), kInk, Align::centre);
    }
    const double top = page_head(pen, kRight, "Found", "where, when, which tide");
    squared(pen, {kRight.x, top, kRight.w, 110}, 5);
    ruled(pen, {kRight.x, top + 112, kRight.w, 49});
    page_foot(pen, kRight, "DRAW IT BEFORE IT DRIES");
}

namespace {

void postcard(Pen& pen, const Box& b, int stamp) {
    pen.box(b, 1.5).fill(kPaper, true).stroke(kInk, 0.5);
    pen.line({b.x + b.w * 0.54, b.y + 7}, {b.x + b.w * 0.54, b.bottom() - 7}).stroke(kInkMid, 0.5);
    ruled(pen, {b.x + 7, b.y + 6, b.w * 0.54 - 14, b.h - 14}, 7.5);
    ruled(pen, {b.x + b.w * 0.54 + 7, b.y + 30, b.w * 0.46 - 14, 36}, 9);
    const Box s{b.right() - 25, b.y + 6, 19, 24};
    pen.box(s).fill(stamp ? kBrickSoft : kGlassSoft);
    for (double x = s.x; x <= s.right() + 0.1; x += 1.9) pen.circle({x, s.y}, 0.6).circle({x, s.bottom()}, 0.6);
    for (double y = s.y; y <= s.bottom() + 0.1; y += 2.0) pen.circle({s.x, y}, 0.6).circle({s.right(), y}, 0.6);
    pen.fill(kPaper);
    if (stamp)
        scallop(pen, {s.centre().x, s.y + 10}, 5.4, kPaper, kInk);
    else
        draw_boat(pen, {s.centre().x, s.y + 15}, 6, kPaper, kInk);
    put(pen, {s.centre().x, s.bottom() - 2.4}, stamp ? "EBB 3" : "FLOOD 5", sized(kCaps, 4.4), kInk, Align::centre);
}

}  // namespace

void post_face(Pen& pen) {
    ground(pen, kGlassPale);
    put(pen, {kLeft.centre().x, 27}, "By the mail boat", sized(kTitle, 20), kInk, Align::centre);
    put(pen, {kLeft.centre().x, 35}, "drafts of letters home", sized(kItalic, 9.5), kInkMid, Align::centre);
    postcard(pen, {kLeft.x, 44, kLeft.w, 76}, 0);
    postcard(pen, {kLeft.x, 127, kLeft.w, 76}, 1);
    pen.box({kRight.x - 4, kRight.y - 3, kRight.w + 8, kRight.h + 6}, 3).fill(kPaper);
    const double top = page_head(pen, kRight, "Stowage", "aboard, and ashore");
    const double w = (kRight.w - 9) / 2;
    for (int i = 0; i < 2; ++i) {
        const double x = kRight.x + i * (w + 9);
        put(pen, {x, top + 4}, i ? "To fetch ashore" : "To have aboard", sized(kItalic, 11), kInk);
        check_boxes(pen, {x, top + 6, w, 152}, 19);
    }
    wave_rule(pen, {kRight.centre().x, kRight.bottom() - 3}, 40, kBrick, 0.6);
}

}  // namespace art
