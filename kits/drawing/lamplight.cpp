// SPDX-License-Identifier: GPL-3.0-or-later
// The lamp keeper's notebook: eight faces and a cover, all vectors.
#include <array>

#include "almanac.h"
#include "chance.h"
#include "forms.h"
#include "lamps.h"
#include "leaf.h"
#include "moon.h"
#include "ornaments.h"
#include "pictures.h"

namespace art {
namespace {

constexpr Colour kLine = kDuskSoft;

void title(Pen& pen, double x, double y, const char* text, const char* under) {
    put(pen, {x, y}, text, sized(kTitle, 22), kDusk, Align::centre);
    put(pen, {x, y + 8}, under, sized(kItalic, 9.5), kDuskMid, Align::centre);
}

double head(Pen& pen, const Box& page, const char* text, const char* note) {
    return page_head(pen, page, text, note, kDusk);
}

// Stars on a loose grid, so that none crowd and none touch what stands in the boxes.
void star_field(Pen& pen, const Box& box, const std::vector<Box>& free, unsigned seed, Colour colour) {
    Chance chance(seed);
    for (double y = box.y; y < box.bottom(); y += 13)
        for (double x = box.x; x < box.right(); x += 13) {
            const Point p{x + chance.between(2, 11), y + chance.between(2, 11)};
            const double r = chance.between(0.35, 1.4);
            bool kept = false;
            for (const Box& b : free) kept = kept || b.holds(p, 2);
            if (!kept) draw_star(pen, p, r, colour, r > 1.1 ? 8 : 4, 0.3);
        }
}

void first_face(Pen& pen) {
    ground(pen, kGlow);
    const double right = kRight.centre().x, left = kLeft.centre().x;
    star_field(pen, kCanvas,
               {{162, 26, 117, 52}, {right - 52, 84, 104, 122}, {left - 48, 88, 96, 44}, {kFold - 5, 0, 10, 222}}, 3,
               kBuffDeep);
    glow(pen, {right, 140}, 24, 48, kAmber);
    oil_lamp(pen, {right, 186}, 84);
    draw_moth(pen, {right + 38, 112}, 17, 0, 38);
    draw_moth(pen, {right - 37, 128}, 13, 2, -52);
    put(pen, {right, 50}, "Lamplight", sized(kTitle, 40), kDusk, Align::centre);
    put(pen, {right, 63}, "A KEEPER\u2019S NOTEBOOK", kCaps, kDusk, Align::centre);
    put(pen, {left, 104}, "Trim the wick,", {"Vollkorn Italic", 17, 0, true}, kDusk, Align::centre);
    put(pen, {left, 113}, "fill the lamp,", {"Vollkorn Italic", 17, 0, true}, kDusk, Align::centre);
    put(pen, {left, 122}, "write it down.", {"Vollkorn Italic", 17, 0, true}, kDusk, Align::centre);
}

void keeper_face(Pen& pen) {
    const double left = kLeft.centre().x;
    pen.box(kLeft.inset(2), 4).stroke(kDusk, 0.8);
    pen.box(kLeft.inset(3.6), 3).stroke(kDusk, 0.3);
    glow(pen, {left, 63}, 14, 27, kAmber);
    hand_lantern(pen, {left, 87}, 50);
    put(pen, {left, 118}, "This lamp", {"Vollkorn", 20, 0, true}, kDusk, Align::centre);
    put(pen, {left, 126.5}, "is tended by", {"Vollkorn Italic", 15, 0, true}, kDusk, Align::centre);
    const double x = kLeft.x + 18, w = kLeft.w - 36;
    pen.line({x, 143}, {x + w, 143}).stroke(kDusk, 0.5);
    blank_field(pen, {x, 157}, w, "first lit on");
    blank_field(pen, {x, 169}, w, "put out on");
    draw_moth(pen, {left, 186}, 17, 1);
    const double top = head(pen, kRight, "Found by this light", "an index");
    for (int i = 0; i < 21; ++i) {
        const double y = top + 6 + i * 8.2;
        pen.line({kRight.x, y}, {kRight.right() - 20, y})
            .line({kRight.right() - 15, y}, {kRight.right(), y})
            .stroke(kLine, 0.4);
        draw_star(pen, {kRight.right() - 17.5, y - 0.3}, 0.9, kAmber);
    }
}

void evening_face(Pen& pen) {
    ground(pen, kDuskPale);
    for (const bool second : {false, true}) {
        const Box& page = second ? kRight : kLeft;
        pen.box({page.x - 4, page.y - 3, page.w + 8, page.h + 6}, 3).fill(kPaper);
        const double top = head(pen, page, second ? "Until it was put out" : "Evening log",
                                second ? "what the night held" : "from lamp-lighting");
        if (second) {
            ruled(pen, {page.x, top - 1, page.w, 168}, kRuling, kLine);
            continue;
        }
        blank_field(pen, {page.x, top + 5}, 55, "date");
        blank_field(pen, {page.x + 62, top + 5}, 55, "lit at");
        blank_field(pen, {page.x, top + 15}, 55, "oil");
        blank_field(pen, {page.x + 62, top + 15}, 55, "wick");
        blank_table(pen, {page.x, top + 23, page.w, 78}, {{"HOUR", 1}, {"FLAME", 1.2}, {"WIND", 1.2}, {"SEEN", 4}}, 9,
                    kDuskPale);
        ruled(pen, {page.x, top + 104, page.w, 63}, kRuling, kLine);
    }
}

void moth_face(Pen& pen) {
    const std::array<const char*, 4> names{"Brick-eye", "Dusk sail", "Candle fool", "Glass hood"};
    const std::array<const char*, 4> notes{"July, at the oil lamp", "still nights only", "comes to any flame",
                                           "rests on the pane"};
    title(pen, kLeft.centre().x, 27, "Guests at the pane", "four moths of an invented shore");
    for (int i = 0; i < 4; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const Point at{kLeft.x + kLeft.w * ((i % 2) + 0.5) / 2, 79 + 79.0 * (i / 2)};
        draw_moth(pen, at, 46, i);
        put(pen, {at.x, at.y + 27}, names[k], sized(kText, 11), kDusk, Align::centre);
        put(pen, {at.x, at.y + 32}, notes[k], kNote, kDuskMid, Align::centre);
    }
    const double top = head(pen, kRight, "Guests seen", "draw them, let them go");
    for (int i = 0; i < 6; ++i) {
        const Box b{kRight.x + (i % 2) * 60.5, top + 56.5 * (i / 2), 56.5, 38};
        pen.box(b, 2).stroke(kDuskMid, 0.5);
        pen.line({b.x, b.bottom() + 7}, {b.right(), b.bottom() + 7})
            .line({b.x, b.bottom() + 14}, {b.right(), b.bottom() + 14})
            .stroke(kLine, 0.4);
    }
}

struct Figure {
    const char* name;
    Point label;
    Path stars;
};

void sky_face(Pen& pen) {
    ground(pen, mix(kDuskPale, kWhite, 0.4));
    const Point c{kLeft.centre().x, 112};
    title(pen, c.x, 27, "The keeper\u2019s sky", "figures that only we have named");
    pen.circle(c, 57).fill(kPaper, true).stroke(kDusk, 0.8);
    pen.circle(c, 55.6).stroke(kDusk, 0.3);
    for (int i = 0; i < 72; ++i)
        pen.line(bearing(c, i * 5, 57), bearing(c, i * 5, i % 6 ? 56.3 : 54.6)).stroke(kDusk, 0.35);
    for (const double r : {18.0, 36.0}) pen.circle(c, r).dashed(kDuskSoft, 0.35, 0.8, 1.2);
    for (int i = 0; i < 12; ++i) pen.line(bearing(c, i * 30, 4), bearing(c, i * 30, 54)).stroke(kDuskPale, 0.35);
    const std::array<Figure, 5> figures{
        Figure{"The Snuffer", {-24, -38}, {{-40, -24}, {-30, -30}, {-19, -26}, {-14, -14}, {-26, -12}, {-30, -30}}},
        Figure{"Long Wick", {32, -7}, {{18, -44}, {22, -34}, {17, -26}, {26, -18}, {22, -9}}},
        Figure{"The Jug", {25, 37}, {{16, 12}, {33, 9}, {37, 24}, {28, 32}, {14, 27}, {16, 12}}},
        Figure{"Moth", {-31, 27}, {{-46, 6}, {-33, 15}, {-20, 5}, {-33, 15}, {-30, 22}}},
        Figure{"The Ladder", {-4, 49}, {{-10, 28}, {-6, 36}, {3, 33}, {6, 43}}}};
    Chance chance(40);
    for (int i = 0; i < 70; ++i)
        pen.circle(bearing(c, chance.between(0, 360), 53 * std::sqrt(chance.next())), chance.between(0.15, 0.32))
            .fill(kDuskSoft);
    for (const Figure& f : figures) {
        Path at;
        for (const Point s : f.stars) at.push_back(c + s);
        pen.poly(at, false).stroke(kDuskMid, 0.5);
        for (std::size_t i = 0; i < at.size(); ++i) {
            pen.circle(at[i], 1.9).fill(kPaper);
            draw_star(pen, at[i], i % 3 ? 1.3 : 1.9, kAmber, i % 3 ? 4 : 8, 0.4);
        }
        put(pen, c + f.label, f.name, kNote, kDusk, Align::centre);
    }
    draw_star(pen, c, 2.2, kDusk, 8, 0.35);
    put(pen, {c.x, 183}, "Seen at midnight, looking up from the gallery.", kNote, kDuskMid, Align::centre);
    pen.box({kRight.x - 4, kRight.y - 3, kRight.w + 8, kRight.h + 6}, 3).fill(kPaper);
    const double top = head(pen, kRight, "Star notes", "hour, quarter, brightness");
    dotted(pen, {kRight.x, top + 1, kRight.w, 84}, 5, kDuskMid);
    ruled(pen, {kRight.x, top + 90, kRight.w, 77}, kRuling, kLine);
}

void lamp_face(Pen& pen) {
    title(pen, kLeft.centre().x, 27, "Lamps of the house", "and where they stand");
    using Lamp = void (*)(Pen&, Point, double);
    const std::array<Lamp, 4> lamps{oil_lamp, hand_lantern, candle, wall_lamp};
    const std::array<const char*, 4> names{"Oil lamp", "Hand lantern", "Candlestick", "Wall lamp"};
    const std::array<const char*, 4> notes{"on the watch-room table", "by the door, always filled",
                                           "one for every stair", "at the turn of the landing"};
    for (int i = 0; i < 4; ++i) {
        const auto k = static_cast<std::size_t>(i);
        const Point at{kLeft.x + kLeft.w * ((i % 2) + 0.5) / 2, 100 + 82.0 * (i / 2)};
        lamps[k](pen, at, 50);
        pen.line({at.x - 22, at.y + 0.3}, {at.x + 22, at.y + 0.3}).stroke(kDusk, 0.5);
        put(pen, {at.x, at.y + 8}, names[k], sized(kText, 11), kDusk, Align::centre);
        put(pen, {at.x, at.y + 13}, notes[k], kNote, kDuskMid, Align::centre);
    }
    const double top = head(pen, kRight, "Care of the lamps", "a tick for each evening");
    const std::array<const char*, 8> chores{"Wick trimmed", "Oil filled",  "Glass wiped",  "Brass rubbed",
                                            "Matches dry",  "Spare glass", "Door latched", "Log written"};
    const double row = 10.5, first = 42, step = (kRight.w - first) / 7;
    const std::array<const char*, 7> days{"M", "T", "W", "T", "F", "S", "S"};
    for (std::size_t d = 0; d < 7; ++d)
        put(pen, {kRight.x + first + step * (static_cast<double>(d) + 0.5), top + 4}, days[d], sized(kCaps, 6), kDusk,
            Align::centre);
    for (std::size_t i = 0; i < 8; ++i) {
        const double y = top + 8 + row * static_cast<double>(i);
        put(pen, {kRight.x, y + 6.2}, chores[i], sized(kText, 10), kDusk);
        for (int d = 0; d < 7; ++d) pen.circle({kRight.x + first + step * (d + 0.5), y + 5}, 2.7).stroke(kDuskMid, 0.5);
        pen.line({kRight.x, y + row}, {kRight.right(), y + row}).stroke(kLine, 0.35);
    }
    ruled(pen, {kRight.x, top + 98, kRight.w, 70}, kRuling, kLine);
}

void night_clock_face(Pen& pen) {
    ground(pen, kGlow);
    const Point c{kLeft.centre().x, 112};
    title(pen, c.x, 27, "The round of the night", "dusk to dawn, an hour to each bay");
    for (const double r : {57.0, 55.6, 34.0}) pen.circle(c, r).stroke(kDusk, r == 57 ? 0.8 : 0.35);
    for (int i = 0; i < 12; ++i) {
        pen.line(bearing(c, i * 30 + 15, 22), bearing(c, i * 30 + 15, 55.6)).stroke(kDuskSoft, 0.4);
        put_on_arc(pen, c, 49, i * 30, std::to_string((i + 18) % 24), {"Vollkorn SemiBold", 10}, kDusk);
        draw_star(pen, bearing(c, i * 30, 30), i % 3 ? 0.9 : 1.6, kAmber);
    }
    pen.circle(c, 22).fill(kPaper, true).stroke(kDusk, 0.6);
    candle(pen, {c.x - 1, c.y + 14}, 31);
    put(pen, {c.x, 183}, "Shade the hours that you watched.", kNote, kDuskMid, Align::centre);
    pen.box({kRight.x - 4, kRight.y - 3, kRight.w + 8, kRight.h + 6}, 3).fill(kPaper);
    const double top = head(pen, kRight, "The watch", "an hour, a line");
    for (int i = 0; i < 13; ++i) {
        const double y = top + 7 + i * 12.8;
        put(pen, {kRight.x + 8, y + 1.6}, std::to_string((i + 18) % 24), {"Vollkorn SemiBold", 10}, kDusk,
            Align::right);
        pen.line({kRight.x + 13, y - 4}, {kRight.right(), y - 4}).stroke(kDuskPale, 0.4);
        pen.line({kRight.x + 13, y + 2.4}, {kRight.right(), y + 2.4}).stroke(kLine, 0.4);
        pen.circle({kRight.right() - 2.5, y - 0.8}, 1.7).fill(kGlow, true).stroke(kDuskMid, 0.4);
    }
}

void last_face(Pen& pen) {
    ground(pen, kDuskPale);
    const double right = kRight.centre().x;
    star_field(pen, kCanvas,
               {{20, 13, 126, 196}, {right - 48, 34, 96, 42}, {right - 44, 86, 88, 112}, {kFold - 5, 0, 10, 222}}, 8,
               kDuskSoft);
    pen.box({kLeft.x - 4, kLeft.y - 3, kLeft.w + 8, kLeft.h + 6}, 3).fill(kPaper);
    const double top = head(pen, kLeft, "Last light", "before the shutters close");
    ruled(pen, {kLeft.x, top - 1, kLeft.w, 168}, kRuling, kLine);
    put(pen, {right, 50}, "Good night", sized(kTitle, 30), kDusk, Align::centre);
    put(pen, {right, 61}, "Leave one lamp for whoever is still out.", sized(kItalic, 9.5), kDusk, Align::centre);
    pen.circle({right, 146}, 40).fill(kPaper, true).stroke(kDusk, 0.4);
    hand_lantern(pen, {right, 176}, 62);
    draw_moth(pen, {right + 27, 132}, 15, 3, 24);
}

void cover_face(Pen& pen) {
    ground(pen, kDusk);
    const double step = 30.3;
    for (int row = 0; row < 11; ++row)
        for (int column = 0; column < 12; ++column) {
            const double x = (column + (row % 2 ? 0.5 : 0)) * step, y = row * 22.2;
            const int kind = (column + row + column / 3 + row / 2) % 4;
            if ((column + row * 2 - row / 2) % 3 == 0) {
                for (int i = 0; i < 24; ++i)
                    pen.line(bearing({x, y}, i * 15, 3.2), bearing({x, y}, i * 15, i % 2 ? 5.2 : 7))
                        .stroke(kStraw, 0.5);
                draw_star(pen, {x, y}, 2.6, kStraw, 8, 0.45);
            } else {
                draw_moth(pen, {x, y}, 19, kind, (row * 5 + column * 3) % 8 * 45.0);
            }
            draw_star(pen, {x + step / 2, y}, 0.9, kDuskMid);
        }
}

}  // namespace

void write_lamplight(const std::string& folder) {
    write_pdf(folder + "/pages.pdf", "Lamplight, pages",
              {first_face, keeper_face, evening_face, moth_face, sky_face, lamp_face, night_clock_face, last_face});
    write_pdf(folder + "/cover.pdf", "Lamplight, cover", {cover_face});
}

}  // namespace art
