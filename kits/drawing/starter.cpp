// SPDX-License-Identifier: GPL-3.0-or-later
// The starter kit: plain pages that ask to be replaced.
#include "almanac.h"
#include "forms.h"
#include "leaf.h"
#include "ornaments.h"
#include "pictures.h"

namespace art {
namespace {

constexpr Colour kSlate = rgb(0x3d4a4f);
constexpr Colour kMist = rgb(0xb7c4c6);
constexpr Colour kLinen = rgb(0xf8f6f1);
constexpr Colour kLeaf = rgb(0x7fa08a);

void replace_me(Pen& pen, const Box& page, const std::string& what) {
    const Point c = page.centre();
    const std::string line = "Replace me with your own drawing";
    const double half = std::max(width_of(pen, line, kItalic), width_of(pen, what, kTiny)) / 2 + 5;
    pen.box({c.x - half, c.y - 7, half * 2, 14}, 2).fill(kLinen);
    put(pen, {c.x, c.y}, line, kItalic, kSlate, Align::centre);
    put(pen, {c.x, c.y + 4.2}, what, sized(kTiny, 5.6), kSlate, Align::centre);
}

void both_pages(Pen& pen, int number, void (*draw)(Pen&, const Box&)) {
    ground(pen, kLinen);
    for (const Box& page : {kLeft, kRight}) {
        draw(pen, page);
        replace_me(pen, page, "face " + std::to_string(number) + (page.x < kFold ? ", left page" : ", right page"));
    }
}

void cover(Pen& pen) {
    ground(pen, kLinen);
    const Point c = kCanvas.centre();
    const Box free{c.x - 30, c.y - 8, 60, 16};
    int row = 0;
    for (double y = c.y - 8 * 15; y < kCanvasHeight + 15; y += 15, ++row)
        for (double x = c.x - (row % 2 ? 180 : 171); x < kCanvasWidth + 18; x += 18)
            if (!free.holds({x, y}, 3))
                pen.poly({{x, y - 2.6}, {x + 2.6, y}, {x, y + 2.6}, {x - 2.6, y}}, true).fill(row % 3 ? kMist : kLeaf);
    replace_me(pen, kCanvas, "cover paper, full sheet");
}

}  // namespace

void write_starter(const std::string& folder) {
    using Draw = void (*)(Pen&, const Box&);
    const Draw draws[] = {[](Pen& pen, const Box& page) { dotted(pen, page, 5, kLeaf, 0.28); },
                          [](Pen& pen, const Box& page) { ruled(pen, page, 7.15, kMist); },
                          [](Pen& pen, const Box& page) {
                              pen.box(page).stroke(kLeaf, 1.4);
                              pen.box(page.inset(2.4)).stroke(kLeaf, 0.4);
                          },
                          [](Pen& pen, const Box& page) { squared(pen, page, 6, kMist); }};
    for (int i = 0; i < 4; ++i)
        write_palette_png(folder + "/pages/" + std::to_string(i + 1) + ".png",
                          paint([&](Pen& pen) { both_pages(pen, i + 1, draws[i]); }));
    write_palette_png(folder + "/covers/cover.png", paint(cover));
}

}  // namespace art
