// SPDX-License-Identifier: GPL-3.0-or-later
// Faces with charts.
#include "chart.h"
#include "faces.h"
#include "forms.h"
#include "leaf.h"
#include "ornaments.h"
#include "places.h"
#include "rose.h"
#include "waves.h"

namespace art {
namespace {

void label(Pen& pen, Point at, const std::string& text, double points, Colour ink, double turn = 0) {
    const Hold hold(pen);
    pen.shift(at).turn(turn);
    put(pen, {0, 0}, text, spaced({"Vollkorn Italic", points}, 60), ink, Align::centre);
}

}  // namespace

void sound_chart_face(Pen& pen) {
    const ChartTone tone{};
    const Field field = hollin_sound();
    draw_ground(pen, kCanvas.inset(-2), field, tone);
    const Box card{kRight.x - 1, 24, kRight.w + 2, 172};
    const Box title{30, 27, 66, 28};
    draw_soundings(pen, kCanvas, field, tone,
                   {card,
                    title,
                    {84, 148, 52, 52},
                    {66, 93, 60, 10},
                    {kFold - 5, 0, 10, 222},
                    {47, 136, 26, 14},
                    {118, 114, 7, 8},
                    {80, 124, 8, 8},
                    {97, 75, 8, 6}},
                   5);
    draw_rose(pen, {111, 174}, 22);
    light_mark(pen, {46, 139.5}, 2.2);
    put(pen, {56.5, 143.5}, "Fl(3) 20 s", {"Vollkorn Italic", 7.5}, kBrick);
    wreck_mark(pen, {101, 78});
    rock_mark(pen, {84, 128});
    anchor_mark(pen, {121, 118}, 2.6, kInkMid);
    label(pen, {96, 100}, "HOLLIN SOUND", 11, kInk);
    label(pen, {31, 158}, "Skerrow", 9, kInk);
    label(pen, {31, 162.8}, "Point", 9, kInk);
    pen.box(title, 1.5).fill(kPaper, true).stroke(kInk, 0.5);
    pen.box(title.inset(1.2), 0.8).stroke(kInk, 0.3);
    put(pen, {title.centre().x, 36.5}, "Approaches to", kItalic, kInk, Align::centre);
    put(pen, {title.centre().x, 43.5}, "Hollin Sound", sized(kTitle, 17), kInk, Align::centre);
    put(pen, {title.centre().x, 50}, "SOUNDINGS IN METRES. NOT FOR SAILING.", sized(kCaps, 4.2), kInkMid,
        Align::centre);
    pen.box(card, 1.5).fill(kPaper);
    rule_frame(pen, card.inset(2.5));
    put(pen, {card.centre().x, 39}, "Passage notes", sized(kTitle, 16), kInk, Align::centre);
    ruled(pen, {card.x + 10, 42, card.w - 20, 147});
}

void harbour_face(Pen& pen) {
    ground(pen, kWhite);
    const Box frame{kLeft.x + 3, kLeft.y + 19, kLeft.w - 6, 150};
    put(pen, {kLeft.centre().x, 25}, "Withy Haven", sized(kTitle, 20), kInk, Align::centre);
    put(pen, {kLeft.centre().x, 31}, "PLAN OF THE HARBOUR", sized(kCaps, 5.4), kInkMid, Align::centre);
    const ChartTone tone{.land = kBuff, .water = kWhite};
    const Field field = withy_haven();
    draw_ground(pen, frame, field, tone);
    draw_soundings(pen, frame, field, tone,
                   {{36, 168, 42, 14}, {104, 46, 27, 28}, {74, 109, 26, 7}, {76, 118, 9, 9}, {62, 95, 14, 12}}, 9, 8);
    draw_chart_frame(pen, frame, kInk);
    draw_rose(pen, {117.5, 60}, 15, {.degrees = false});
    anchor_mark(pen, {80, 122}, 2.6, kInkMid);
    label(pen, {87, 114}, "The Pool", 9, kInk);
    light_mark(pen, {65.5, 97.5}, 2);
    scale_bar(pen, {40, 174}, 32, 4, "cables");
    put(pen, {kLeft.centre().x, frame.bottom() + 8}, "Enter on the last of the flood, the chapel over the slip.", kNote,
        kInkMid, Align::centre);
    const double top = page_head(pen, kRight, "Sailing directions", "as the old hands give them");
    draw_coast_view(pen, {kRight.x, top + 2, kRight.w, 22});
    put(pen, {kRight.centre().x, top + 30}, "Withy Haven, bearing north, three miles off", kNote, kInkMid,
        Align::centre);
    ruled(pen, {kRight.x, top + 33, kRight.w, 126});
    page_foot(pen, kRight, "PILOT NOTES");
}

}  // namespace art
