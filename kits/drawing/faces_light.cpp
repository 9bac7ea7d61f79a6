// SPDX-License-Identifier: GPL-3.0-or-later
// Faces on lights, marks and signals.
#include <array>

#include "faces.h"
#include "flags.h"
#include "forms.h"
#include "leaf.h"
#include "ornaments.h"
#include "rose.h"
#include "tower.h"
#include "waves.h"

namespace art {
namespace {

struct Light {
    const char* name;
    const char* character;
    const char* height;
    const char* range;
    std::vector<std::pair<double, double>> lit;  // from and to, in seconds
    double period;
};

const std::vector<Light>& lights() {
    static const std::vector<Light> all{
        {"Skerrow Point", "Fl(3) 20 s", "41 m", "18 M", {{0, 0.8}, {3, 3.8}, {6, 6.8}}, 20},
        {"Hollin Sound", "Oc 8 s", "17 m", "11 M", {{0, 6.5}}, 8},
        {"The Ganters",
         "Q(6) 15 s",
         "12 m",
         "9 M",
         {{0, 0.5}, {1.2, 1.7}, {2.4, 2.9}, {3.6, 4.1}, {4.8, 5.3}, {6, 6.5}},
         15},
        {"Withy Haven", "Iso 4 s", "9 m", "6 M", {{0, 2}}, 4},
        {"Old Nan", "Fl 10 s", "33 m", "16 M", {{0, 0.8}}, 10},
        {"Ravel Sands", "Fl(2) 12 s", "21 m", "13 M", {{0, 0.7}, {2.6, 3.3}}, 12}};
    return all;
}

// One round of a light along a line: what is lit stands out.
void rhythm(Pen& pen, Point at, double width, const Light& light) {
    pen.line(at, {at.x + width, at.y}).stroke(kInkMid, 0.4);
    for (const auto& [from, to] : light.lit)
        pen.box(
               {at.x + width * from / light.period, at.y - 1.2, std::max(width * (to - from) / light.period, 0.9), 2.4})
            .fill(kBrick);
    for (const double x : {at.x, at.x + width}) pen.line({x, at.y - 1.8}, {x, at.y + 1.8}).stroke(kInkMid, 0.5);
}

void dimension(Pen& pen, double x, double top, double bottom, const std::string& text) {
    pen.line({x, top}, {x, bottom});
    for (const double y : {top, bottom}) pen.line({x - 1.5, y}, {x + 1.5, y});
    pen.stroke(kInkMid, 0.4);
    const Hold hold(pen);
    pen.shift({x - 1.6, (top + bottom) / 2}).turn(-90);
    put(pen, {0, 0}, text, kNote, kInkMid, Align::centre);
}

}  // namespace

void light_face(Pen& pen) {
    ground(pen, kPaper);
    const double middle = kLeft.centre().x;
    const Tower tower{.height = 88, .base = 22, .top = 13.5, .windows = 4};
    const Point foot{middle, 172};
    const double lamp = foot.y - lamp_height(tower);
    for (int i = 1; i < 6; ++i) pen.circle({middle, lamp}, 7 + i * 4.4).stroke(mix(kBuffDeep, kPaper, i * 0.1), 0.35);
    draw_beams(pen, {middle, lamp}, 54, kBuffDeep, 0.4);
    draw_rock(pen, foot, 100, 20, kBuff, kInk, 5);
    draw_tower(pen, foot, tower);
    draw_sea(pen, {-5, 180, 313, 47},
             {.far = kPaper, .near = kGlassPale, .line = kInkMid, .rows = 4, .wavelength = 24, .seed = 4});
    dimension(pen, kLeft.x + 16, lamp, 182, "41 metres above high water");
    put(pen, {middle, 26}, "Skerrow Point", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {middle, 34.5}, "Fl(3) 20 s   41 m   18 M", {"Vollkorn Italic", 11}, kBrick, Align::centre);
    rhythm(pen, {middle - 35, 42}, 70, lights()[0]);
    const double top = page_head(pen, kRight, "List of lights", "from north about");
    double y = top + 1;
    for (const Light& l : lights()) {
        put(pen, {kRight.x, y + 5}, l.name, sized(kText, 10), kInk);
        put(pen, {kRight.x + 34, y + 5}, l.character, {"Vollkorn Italic", 9}, kBrick);
        put(pen, {kRight.x + 62, y + 5}, l.height, kFigures, kInk, Align::right);
        put(pen, {kRight.x + 76, y + 5}, l.range, kFigures, kInk, Align::right);
        rhythm(pen, {kRight.x + 82, y + 3.8}, kRight.w - 82, l);
        pen.line({kRight.x, y + 8}, {kRight.right(), y + 8}).stroke(kInkPale, 0.4);
        y += 9;
    }
    put(pen, {kRight.x, y + 9}, "Lights seen, and when", sized(kItalic, 11), kInk);
    ruled(pen, {kRight.x, y + 11, kRight.w, 77});
}

void six_lights_face(Pen& pen) {
    ground(pen, kPaper);
    for (const Box& page : {kLeft, kRight}) ruled(pen, {page.x, page.y + 5, page.w, 77});
    const std::array<Tower, 6> towers{
        Tower{.height = 44, .base = 11, .top = 7, .windows = 3},
        Tower{.height = 22, .base = 10, .top = 8, .daymark = Daymark::plain, .mark = kGlassDeep, .windows = 1},
        Tower{.height = 36, .base = 12, .top = 6, .daymark = Daymark::lattice, .mark = kInk, .house = false},
        Tower{.height = 24, .base = 8, .top = 6, .daymark = Daymark::upper_half, .mark = kGlassDeep, .windows = 2},
        Tower{.height = 46, .base = 12, .top = 7, .daymark = Daymark::spiral, .windows = 3},
        Tower{
            .height = 34, .base = 9, .top = 6.6, .daymark = Daymark::bands, .bands = 4, .mark = kInk, .house = false}};
    draw_sea(pen, {-5, 172, 313, 55},
             {.far = kPaper, .near = kGlassPale, .line = kInkSoft, .rows = 6, .wavelength = 22, .seed = 44});
    for (std::size_t i = 0; i < 6; ++i) {
        const Box& page = i < 3 ? kLeft : kRight;
        const double x = page.x + page.w * (static_cast<double>(i % 3) + 0.5) / 3;
        const double shift = towers[i].house ? -4.5 : 0;
        draw_rock(pen, {x, 172}, 33, 10, kBuff, kInk, 60 + static_cast<unsigned>(i));
        draw_tower(pen, {x + shift, 172}, towers[i]);
    }
    draw_sea(pen, {-5, 178, 313, 49},
             {.far = mix(kPaper, kGlassPale, 0.5),
              .near = kGlassPale,
              .line = kInkSoft,
              .rows = 5,
              .wavelength = 22,
              .seed = 41});
    for (std::size_t i = 0; i < 6; ++i) {
        const Box& page = i < 3 ? kLeft : kRight;
        const double x = page.x + page.w * (static_cast<double>(i % 3) + 0.5) / 3;
        pen.box({x - 17.5, 186, 35, 18.5}, 1.5).fill(kPaper, true).stroke(kInk, 0.4);
        put(pen, {x, 191.5}, lights()[i].name, sized(kText, 9), kInk, Align::centre);
        put(pen, {x, 196.6}, lights()[i].character, {"Vollkorn Italic", 8}, kBrick, Align::centre);
        rhythm(pen, {x - 13, 200.6}, 26, lights()[i]);
    }
}

void flag_face(Pen& pen) {
    ground(pen, kPaper);
    const double top = page_head(pen, kLeft, "Signals of the Sound", "one flag, one meaning");
    const std::array<const char*, 24> words{
        "come ashore",  "fog coming",   "letter for you", "kettle is on", "all is well",  "lend a hand",
        "tide turning", "good fishing", "stay out",       "thank you",    "boat wanted",  "lamp lit",
        "wind rising",  "seals about",  "bread baked",    "net torn",     "home by dark", "look up",
        "deep here",    "shoal here",   "wait for me",    "found it",     "lost it",      "good night"};
    const double w = kLeft.w / 4, h = 27.2;
    for (int i = 0; i < kFlagCount; ++i) {
        const Point c{kLeft.x + w * (i % 4 + 0.5), top + h * (i / 4) + 11};
        draw_flag(pen, {c.x - 10.5, c.y - 8, 21, 16}, i);
        put(pen, {c.x, c.y + 12.6}, words[static_cast<std::size_t>(i)], sized(kNote, 8), kInk, Align::centre);
    }
    page_foot(pen, kLeft, "A CODE OF OUR OWN");
    bunting(pen, {kRight.x, 22}, {kRight.right(), 22}, 9, 11, 7.2, 3);
    put(pen, {kRight.centre().x, 54}, "Hoisted today", sized(kTitle, 18), kInk, Align::centre);
    for (int i = 0; i < 4; ++i) {
        const double x = kRight.x + kRight.w * (i + 0.5) / 4;
        pen.box({x - 11, 61, 22, 16.5});
        pen.dashed(kInkMid, 0.5, 1.4, 1.1);
    }
    put(pen, {kRight.centre().x, 84}, "colour them in", kNote, kInkMid, Align::centre);
    ruled(pen, {kRight.x, 87, kRight.w, 105});
    page_foot(pen, kRight, "AND WHAT THEY ANSWERED");
}

void buoy_face(Pen& pen) {
    ground(pen, kGlassPale);
    const std::array<const char*, 6> names{"The Widow", "Number Nine", "Cold Kettle",
                                           "Sunday",    "Long Tom",    "Bell of Ravel"};
    const std::array<const char*, 6> notes{"keep her to seaward", "turn here for home",  "rock, dries at springs",
                                           "pulled up in winter", "a perch, not a buoy", "rings in a swell"};
    put(pen, {kLeft.centre().x, 27}, "Buoys and perches", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {kLeft.centre().x, 35}, "between the Sound and the sea", sized(kItalic, 9.5), kInkMid, Align::centre);
    for (int i = 0; i < 6; ++i) {
        constexpr double kRows[] = {78, 129, 186};
        const Point at{kLeft.x + kLeft.w * ((i % 2) + 0.5) / 2, kRows[i / 2]};
        draw_buoy(pen, at, 1.65, i);
        put(pen, {at.x, at.y + 11}, names[static_cast<std::size_t>(i)], sized(kText, 10.5), kInk, Align::centre);
        put(pen, {at.x, at.y + 15.4}, notes[static_cast<std::size_t>(i)], kNote, kInkMid, Align::centre);
    }
    pen.box({kRight.x - 4, kRight.y - 3, kRight.w + 8, kRight.h + 6}, 3).fill(kPaper);
    const double top = page_head(pen, kRight, "Marks passed", "hour, name, to port or starboard");
    blank_table(pen, {kRight.x, top, kRight.w, kRight.bottom() - top - 4},
                {{"HOUR", 1.2}, {"MARK", 3}, {"SIDE", 1}, {"REMARKS", 4}}, 20);
}

void rose_face(Pen& pen) {
    ground(pen, kPaper);
    const Point c{kLeft.centre().x, 112};
    {
        const Hold hold(pen);
        pen.box(kCanvas.inset(-1)).clip();
        rhumbs(pen, c, 320, mix(kInkPale, kPaper, 0.25), 0.3);
    }
    pen.circle(c, 57).fill(kPaper);
    draw_rose(pen, c, 56);
    put(pen, {c.x, 30}, "Thirty-two winds", sized(kTitle, 22), kInk, Align::centre);
    put(pen, {c.x, 38.5}, "and a name for each of them, if you like", sized(kItalic, 9.5), kInkMid, Align::centre);
    put(pen, {c.x, 184}, "Variation nought: in this almanac north is north.", kNote, kInkMid, Align::centre);
    pen.box({kRight.x - 3, kRight.y - 2, kRight.w + 6, kRight.h + 4}, 2).fill(kPaper, true).stroke(kInk, 0.4);
    const Box page{kRight.x + 3, kRight.y + 2, kRight.w - 6, kRight.h - 5};
    const double top = page_head(pen, page, "Bearings taken");
    blank_table(pen, {page.x, top, page.w, 84}, {{"DATE", 1.3}, {"FROM", 2.4}, {"OF", 2.4}, {"BEARING", 1.5}}, 10);
    ruled(pen, {page.x, top + 90, page.w, 70});
    page_foot(pen, page, "WHERE WE STOOD");
}

}  // namespace art
