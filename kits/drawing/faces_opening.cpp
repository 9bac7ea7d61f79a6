// SPDX-License-Identifier: GPL-3.0-or-later
// The faces that open and close the book.
#include "faces.h"
#include "forms.h"
#include "leaf.h"
#include "moon.h"
#include "ornaments.h"
#include "rope.h"
#include "rose.h"
#include "tower.h"
#include "waves.h"

namespace art {

void title_face(Pen& pen) {
    ground(pen, kGlassPale);
    const double middle = kRight.centre().x;
    const Tower tower{.height = 58, .base = 15, .top = 9.6};
    const Point foot{middle, 172};
    draw_beams(pen, {foot.x, foot.y - lamp_height(tower)}, 96, kBuffDeep, 0.4);
    draw_moon(pen, {62, 96}, 11, 0.36, kInkSoft, kPaper);
    draw_gull(pen, {100, 118}, 12, kInkMid, -8);
    draw_gull(pen, {112, 126}, 8, kInkMid, 6);
    draw_gull(pen, {259, 96}, 9, kInkMid, -6);
    draw_sea(pen, {-5, 163, 313, 64},
             {.far = kGlassPale, .near = kGlassSoft, .line = kInkMid, .rows = 7, .wavelength = 26, .seed = 11});
    draw_boat(pen, {78, 177}, 11, kBuffMid, kInk);
    draw_sea(pen, {-5, 175, 313, 52},
             {.far = kGlassSoft, .near = kGlassSoft, .line = kInkMid, .rows = 4, .wavelength = 26, .seed = 5});
    draw_rock(pen, foot, 62, 22, kPaper, kInk, 3);
    draw_tower(pen, foot, tower);
    draw_sea(pen, {-5, 186, 313, 41},
             {.far = kGlassSoft, .near = kGlass, .line = kInk, .rows = 3, .wavelength = 30, .seed = 21});
    put(pen, {middle, 42}, "Tidewater", sized(kTitle, 39), kInk, Align::centre);
    put(pen, {middle, 57}, "Almanac", {"Vollkorn Italic", 31, 0, true}, kInk, Align::centre);
    wave_rule(pen, {middle, 65.5}, 34, kBrick, 0.8);
    put(pen, {middle, 74}, "A BOOK FOR TIDES, LIGHTS AND LOGS", kCaps, kInk, Align::centre);
    const double left = kLeft.centre().x;
    put(pen, {left, 42}, "Keep the light,", {"Vollkorn Italic", 17, 0, true}, kInk, Align::centre);
    put(pen, {left, 51}, "and keep the log.", {"Vollkorn Italic", 17, 0, true}, kInk, Align::centre);
    put(pen, {left, 61}, "RULE OF THE KEEPERS AT SKERROW POINT", sized(kCaps, 5.4), kInkMid, Align::centre);
}

namespace {

void bookplate(Pen& pen) {
    const Box frame = kLeft.inset(3);
    const double middle = frame.centre().x;
    rope_frame(pen, frame, 12, {.thickness = 3.2});
    pen.box(frame.inset(5.5), 8).stroke(kInk, 0.4);
    draw_rose(pen, {middle, 67}, 29);
    put(pen, {middle, 114}, "This almanac", {"Vollkorn", 20, 0, true}, kInk, Align::centre);
    put(pen, {middle, 122.5}, "is kept by", {"Vollkorn Italic", 15, 0, true}, kInk, Align::centre);
    const double x = frame.x + 17, w = frame.w - 34;
    pen.line({x, 138}, {x + w, 138}).stroke(kInk, 0.5);
    blank_field(pen, {x, 151}, w, "at the station of");
    blank_field(pen, {x, 163}, w, "begun on");
    blank_field(pen, {x, 175}, w, "ended on");
    wave_rule(pen, {middle, 186}, 30, kBrick, 0.7);
}

}  // namespace

void bookplate_face(Pen& pen) {
    ground(pen, kPaper);
    bookplate(pen);
    const double top = page_head(pen, kRight, "What the tide brought", "an index");
    const double step = 8;
    for (int i = 0; i < 20; ++i) {
        const double y = top + 6 + i * step;
        pen.line({kRight.x, y}, {kRight.right() - 20, y}).stroke(kInkSoft, 0.4);
        pen.line({kRight.right() - 15, y}, {kRight.right(), y}).stroke(kInkSoft, 0.4);
        pen.circle({kRight.right() - 17.5, y - 0.2}, 0.35).fill(kBrick);
    }
    page_foot(pen, kRight, "PAGE AFTER PAGE");
}

void closing_face(Pen& pen) {
    ground(pen, mix(kInkPale, kWhite, 0.35));
    const double middle = kRight.centre().x;
    const Tower tower{.height = 40, .base = 10.5, .top = 6.8, .daymark = Daymark::spiral};
    const Point foot{middle + 22, 168};
    for (int i = 1; i <= 5; ++i) pen.circle({middle - 24, 110}, 14 + i * 4).stroke(kInkSoft, 0.3);
    draw_moon(pen, {middle - 24, 110}, 14, 0.5, kInkMid, kPaper);
    draw_beams(pen, {foot.x, foot.y - lamp_height(tower)}, 30, kInkSoft, 0.35);
    draw_sea(pen, {-5, 156, 313, 71},
             {.far = kInkPale, .near = kGlassSoft, .line = kInkMid, .rows = 8, .wavelength = 24, .seed = 31});
    draw_rock(pen, foot, 46, 20, kPaper, kInk, 8);
    draw_tower(pen, foot, tower);
    draw_sea(pen, {-5, 181, 313, 46},
             {.far = kGlassSoft, .near = kGlass, .line = kInk, .rows = 3, .wavelength = 30, .seed = 12});
    put(pen, {middle, 44}, "Low water", sized(kTitle, 30), kInk, Align::centre);
    put(pen, {middle, 55}, "Here this almanac ends; the next tide is already making.", sized(kItalic, 9.5), kInk,
        Align::centre);
    wave_rule(pen, {middle, 63}, 34, kBrick, 0.8);
    pen.box({kLeft.x - 4, kLeft.y - 3, kLeft.w + 8, 149}, 3).fill(kPaper);
    const double top = page_head(pen, kLeft, "The last entry", "before the lamp is trimmed");
    ruled(pen, {kLeft.x, top + 2, kLeft.w, 126}, kRuling);
}

}  // namespace art
