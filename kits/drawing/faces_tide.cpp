// SPDX-License-Identifier: GPL-3.0-or-later
// Faces on tides, weeks and the moon.
#include <array>

#include "faces.h"
#include "forms.h"
#include "leaf.h"
#include "moon.h"
#include "ornaments.h"
#include "rope.h"
#include "shells.h"
#include "tides.h"
#include "waves.h"

namespace art {
namespace {

// Spring tides of tide_at() fall on the first day; full moon with them.
double age_on_day(int day) { return std::fmod(0.5 + day / 29.53, 1.0); }

void table_head(Pen& pen, const Box& box) {
    const double day_width = 9, column = (box.w - day_width) / 4;
    const std::array<const char*, 4> names{"FIRST", "SECOND", "THIRD", "FOURTH"};
    put(pen, {box.x + day_width / 2, box.y + 4}, "DAY", sized(kCaps, 5.4), kInk, Align::centre);
    for (std::size_t k = 0; k < 4; ++k)
        put(pen, {box.x + day_width + column * (static_cast<double>(k) + 0.5), box.y + 4}, names[k], sized(kCaps, 5.4),
            kInk, Align::centre);
}

}  // namespace

void tide_table_face(Pen& pen) {
    const double top = page_head(pen, kLeft, "Tides at Skerrow Point", "days one to sixteen");
    const Box table{kLeft.x, top, kLeft.w, 160};
    table_head(pen, table);
    draw_tide_table(pen, table, 0, 16, top + 6.5);
    pen.line({table.x, table.bottom()}, {table.right(), table.bottom()}).stroke(kInk, 0.7);
    put(pen, {kLeft.centre().x, table.bottom() + 6},
        "Hours after midnight; metres above the lowest ebb. High water in red.", kNote, kInkMid, Align::centre);
    page_foot(pen, kLeft, "AN INVENTED SHORE");
    const double right = page_head(pen, kRight, "The first four days", "as a curve");
    const Box curve{kRight.x, right + 4, kRight.w, 40};
    for (int m = 0; m <= 6; ++m) {
        const double y = curve.bottom() - curve.h * m / 6;
        pen.line({curve.x, y}, {curve.right(), y}).stroke(kInkPale, 0.35);
    }
    draw_tide_curve(pen, curve, 0, 96, kGlassPale, kInk, 0.8);
    for (int d = 0; d <= 4; ++d) {
        const double x = curve.x + curve.w * d / 4;
        pen.line({x, curve.y}, {x, curve.bottom()}).stroke(kInkSoft, 0.4);
        if (d < 4)
            put(pen, {x + curve.w / 8, curve.bottom() + 4.6}, "day " + std::to_string(d + 1), kNote, kInkMid,
                Align::centre);
    }
    pen.line({curve.x, curve.bottom()}, {curve.right(), curve.bottom()}).stroke(kInk, 0.6);
    ruled(pen, {kRight.x, curve.bottom() + 9, kRight.w, 112});
    page_foot(pen, kRight, "NOTES ON THE WATER");
}

void moon_face(Pen& pen) {
    ground(pen, kPaper);
    const Point c{kLeft.centre().x, 108};
    for (const double r : {57.5, 42.0, 26.0}) pen.circle(c, r).stroke(kInk, r > 50 ? 0.6 : 0.35);
    pen.circle(c, 56.2).stroke(kInk, 0.3);
    for (int i = 0; i < 28; ++i) {
        draw_moon(pen, bearing(c, i * 360.0 / 28, 49.2), 4.3, i / 28.0, kInk, kBuff);
        put_on_arc(pen, c, 37.4, i * 360.0 / 28, std::to_string(i + 1), sized(kFigures, 7), kInkMid);
        pen.line(bearing(c, (i + 0.5) * 360.0 / 28, 42), bearing(c, (i + 0.5) * 360.0 / 28, 36)).stroke(kInkSoft, 0.35);
    }
    pen.circle(c, 34.6).stroke(kInkSoft, 0.35);
    for (const auto& [angle, name] : {std::pair{0.0, "NEW"}, std::pair{90.0, "FIRST QUARTER"}, std::pair{180.0, "FULL"},
                                      std::pair{270.0, "LAST QUARTER"}})
        put_on_arc(pen, c, 29, angle, name, sized(kCaps, 5), kBrick);
    for (int i = 0; i < 72; ++i)
        pen.line(bearing(c, i * 5, 18.5), bearing(c, i * 5, i % 2 ? 21 : 24)).stroke(kBuffDeep, 0.5);
    draw_moon(pen, c, 16, 0.13, kInk, kBuff);
    put(pen, {c.x, 32}, "The moon in her month", sized(kTitle, 21), kInk, Align::centre);
    put(pen, {c.x, 40}, "springs at new and full, neaps between", sized(kItalic, 9.5), kInkMid, Align::centre);
    blank_field(pen, {kLeft.x + 18, 184}, 81, "this month is");
    blank_field(pen, {kLeft.x + 18, 194}, 81, "new moon on");
    const double top = page_head(pen, kRight, "Thirty nights", "a square for each");
    const double w = kRight.w / 5, h = (kRight.bottom() - 6 - top) / 6;
    for (int i = 0; i < 30; ++i) {
        const Box cell{kRight.x + w * (i % 5), top + h * (i / 5), w, h};
        pen.box(cell).stroke(kInkSoft, 0.4);
        put(pen, {cell.x + 2, cell.y + 4.6}, std::to_string(i + 1), {"Vollkorn SemiBold", 8}, kInk);
        draw_moon(pen, {cell.right() - 4, cell.y + 4}, 2.2, std::fmod(i / 29.53, 1.0), kInkMid, kBuff);
    }
    pen.box({kRight.x, top, kRight.w, h * 6}).stroke(kInk, 0.7);
}

void two_tides_face(Pen& pen) {
    ground(pen, kBuff);
    const auto page = [&](const Box& b, const char* title, const char* hint, bool morning) {
        rope_frame(pen, b.inset(1.5), 9, {.thickness = 2.8, .fill = kBuffMid});
        pen.box(b.inset(5.5), 5.5).fill(kPaper, true).stroke(kInk, 0.35);
        const Point c{b.centre().x, b.y + 30};
        const Hold hold(pen);
        put(pen, {c.x, b.y + 45}, title, sized(kTitle, 19), kInk, Align::centre);
        put(pen, {c.x, b.y + 52}, hint, sized(kItalic, 9), kInkMid, Align::centre);
        ruled(pen, {b.x + 13, b.y + 54, b.w - 26, 119});
        pen.box({c.x - 26, b.y + 12, 52, 18.0}).clip();
        for (int i = 0; i < 24; ++i)
            pen.line(bearing(c, -90 + i * 7.826, 11), bearing(c, -90 + i * 7.826, i % 2 ? 14 : 17))
                .stroke(morning ? kBrick : kInkSoft, 0.5);
        if (morning)
            pen.circle(c, 9).fill(kStraw, true).stroke(kInk, 0.6);
        else
            draw_moon(pen, c, 9, 0.62, kInk, kBuff);
        pen.line({c.x - 26, c.y}, {c.x + 26, c.y}).stroke(kInk, 0.7);
    };
    page(kLeft, "Morning tide", "what it left on the sand", true);
    page(kRight, "Evening tide", "what it took away", false);
}

namespace {

void day_block(Pen& pen, const Box& b, const std::string& name, int day) {
    put(pen, {b.x, b.y + 5}, name, {"Vollkorn SemiBold", 12, 0, true}, kInk);
    const Box spark{b.right() - 44, b.y, 44, 6.4};
    draw_tide_curve(pen, spark, day * 24.0, day * 24.0 + 24, kGlassSoft, kInkMid, 0.45);
    draw_moon(pen, {b.right() - 49.5, b.y + 3.4}, 2.5, age_on_day(day), kInkMid, kPaper);
    pen.line({b.x, b.y + 7.4}, {b.right(), b.y + 7.4}).stroke(kInk, 0.6);
    ruled(pen, {b.x, b.y + 7.4, b.w, b.h - 9}, 6.6);
}

}  // namespace

void week_face(Pen& pen) {
    const std::array<const char*, 7> names{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                           "Friday", "Saturday", "Sunday"};
    const double h = 45;
    for (int i = 0; i < 7; ++i) {
        const Box& page = i < 4 ? kLeft : kRight;
        day_block(pen, {page.x, page.y + (i % 4) * (h + 2), page.w, h}, names[static_cast<std::size_t>(i)], i);
    }
    const Box rest{kRight.x, kRight.y + 3 * (h + 2), kRight.w, h - 1.5};
    pen.box(rest, 2).fill(kGlassPale);
    put(pen, {rest.x + 6, rest.y + 8}, "Carried over on the flood", sized(kItalic, 11), kInk);
    ruled(pen, {rest.x + 6, rest.y + 10, rest.w - 12, 27}, 6.6, kGlass);
}

void month_face(Pen& pen) {
    ground(pen, kPaper);
    // The days stand so that fourteen fall on each page and two on the fold, where none is named.
    const double day = 8.625, first = kLeft.x + 2.6;
    const Box curve{-4, 62, kCanvasWidth + 8, 46};
    const auto hours_at = [&](double x) { return ((x - first) / day + 0.5) * 24; };
    put(pen, {kLeft.x, 30}, "From springs to neaps", sized(kTitle, 21), kInk);
    put(pen, {kLeft.x, 38}, "a month of water at Withy Haven", sized(kItalic, 9.5), kInkMid);
    put(pen, {kRight.right(), 30}, "and back again", {"Vollkorn Italic", 17, 0, true}, kInk, Align::right);
    draw_tide_curve(pen, curve, hours_at(curve.x), hours_at(curve.right()), kGlassSoft, kInk, 0.5);
    pen.box({-4, curve.bottom() - 0.05, curve.w, 6}).fill(kGlassSoft);
    for (int d = 0; d < 30; ++d) {
        if (d == 14 || d == 15) continue;
        const double x = first + day * d;
        pen.line({x, 57}, {x, 59.5}).stroke(kInkSoft, 0.4);
        draw_moon(pen, {x, 52.5}, 2.5, age_on_day(d), kInkMid, kBuff);
        put(pen, {x, curve.bottom() + 2.5}, std::to_string(d + 1), sized(kFigures, 6.5), kInk, Align::centre);
    }
    pen.line({-4, curve.bottom() + 6}, {310, curve.bottom() + 6}).stroke(kInk, 0.6);
    for (const Box& page : {kLeft, kRight}) ruled(pen, {page.x, 117, page.w, 84});
}

void dot_shell_face(Pen& pen) {
    ground(pen, kPaper);
    for (const Box& page : {kLeft, kRight}) {
        rule_frame(pen, page.inset(2));
        dotted(pen, page.inset(8.5), 5, kInkMid);
    }
    const auto clear = [&](Point at, double rx, double ry) { pen.ellipse(at, rx, ry).fill(kPaper); };
    clear({50, 183}, 17.5, 14);
    scallop(pen, {45, 184}, 7.4, kBrickSoft, kInk);
    auger_shell(pen, {61, 184}, 7.5, kBuffMid, kInk);
    clear({255, 183}, 17.5, 14);
    starfish(pen, {260, 182.5}, 9, kBuffMid, kInk);
    limpet(pen, {244, 187}, 5.2, kGlassSoft, kInk);
}

}  // namespace art
