// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms.h"

#include "waves.h"

namespace art {

double page_head(Pen& pen, const Box& page, const std::string& title, const std::string& note, Colour ink) {
    put(pen, {page.x, page.y + 5}, title, kHeading, ink);
    if (!note.empty()) put(pen, {page.right(), page.y + 5}, note, kNote, mix(ink, kWhite, 0.25), Align::right);
    pen.line({page.x, page.y + 8.2}, {page.right(), page.y + 8.2}).stroke(ink, 0.7);
    pen.line({page.x, page.y + 9.1}, {page.right(), page.y + 9.1}).stroke(ink, 0.3);
    return page.y + 13;
}

void page_foot(Pen& pen, const Box& page, const std::string& text, Colour ink) {
    const double middle = page.centre().x, y = page.bottom();
    const double half = width_of(pen, text, kCaps) / 2 + 3;
    put(pen, {middle, y}, text, kCaps, ink, Align::centre);
    for (const double side : {-1.0, 1.0}) wave_rule(pen, {middle + side * (half + 8), y - 0.8}, 16, ink, 0.4);
}

void ruled(Pen& pen, const Box& box, double gap, Colour ink) {
    for (int i = 1; i * gap <= box.h + 0.01; ++i)
        pen.line({box.x, box.y + i * gap}, {box.right(), box.y + i * gap}).stroke(ink, 0.4);
}

void dotted(Pen& pen, const Box& box, double gap, Colour ink, double radius) {
    const int columns = static_cast<int>(std::round(box.w / gap));
    gap = box.w / columns;
    const int rows = static_cast<int>(box.h / gap + 0.01);
    const double left = box.x + (box.w - columns * gap) / 2, top = box.y + (box.h - rows * gap) / 2;
    for (int y = 0; y <= rows; ++y)
        for (int x = 0; x <= columns; ++x) pen.circle({left + x * gap, top + y * gap}, radius);
    pen.fill(ink);
}

void squared(Pen& pen, const Box& box, double gap, Colour ink) {
    const int columns = static_cast<int>(std::round(box.w / gap));
    gap = box.w / columns;
    const int rows = static_cast<int>(box.h / gap + 0.01);
    const Box b{box.x + (box.w - columns * gap) / 2, box.y, columns * gap, rows * gap};
    for (int x = 0; x <= columns; ++x) pen.line({b.x + x * gap, b.y}, {b.x + x * gap, b.bottom()}).stroke(ink, 0.35);
    for (int y = 0; y <= rows; ++y) pen.line({b.x, b.y + y * gap}, {b.right(), b.y + y * gap}).stroke(ink, 0.35);
}

double blank_table(Pen& pen, const Box& box, const std::vector<Column>& columns, int rows, Colour tint) {
    const double head = 7, row = (box.h - head) / rows;
    pen.box({box.x, box.y, box.w, head}).fill(tint);
    for (int i = 1; i < rows; ++i)
        pen.line({box.x, box.y + head + i * row}, {box.right(), box.y + head + i * row}).stroke(kInkSoft, 0.35);
    double x = box.x, sum = 0;
    for (const Column& c : columns) sum += c.share;
    for (const Column& c : columns) {
        const double w = box.w * c.share / sum;
        put(pen, {x + w / 2, box.y + 4.5}, c.title, sized(spaced(kCaps, 80), 5.6), kInk, Align::centre);
        if (x > box.x) pen.line({x, box.y}, {x, box.bottom()}).stroke(kInkSoft, 0.35);
        x += w;
    }
    pen.line({box.x, box.y}, {box.right(), box.y}).stroke(kInk, 0.7);
    pen.line({box.x, box.y + head}, {box.right(), box.y + head}).stroke(kInk, 0.4);
    pen.line({box.x, box.bottom()}, {box.right(), box.bottom()}).stroke(kInk, 0.7);
    return row;
}

void blank_field(Pen& pen, Point at, double width, const std::string& label) {
    put(pen, at, label, kNote, kInkMid);
    const double start = at.x + width_of(pen, label, kNote) + 2;
    pen.line({start, at.y + 0.6}, {at.x + width, at.y + 0.6}).stroke(kInkSoft, 0.4);
}

void check_boxes(Pen& pen, const Box& box, int rows) {
    const double row = box.h / rows;
    for (int i = 0; i < rows; ++i) {
        const double y = box.y + row * (i + 1);
        pen.box({box.x, y - 3.6, 3, 3}, 0.5).stroke(kInkMid, 0.5);
        pen.line({box.x + 5.5, y}, {box.right(), y}).stroke(kInkSoft, 0.4);
    }
}

void rule_frame(Pen& pen, const Box& box, Colour ink) {
    pen.box(box).stroke(ink, 0.8);
    pen.box(box.inset(1.4)).stroke(ink, 0.3);
    for (const double x : {box.x, box.right()})
        for (const double y : {box.y, box.bottom()}) {
            pen.poly({{x, y - 2}, {x + 2, y}, {x, y + 2}, {x - 2, y}}, true).fill(kPaper, true).stroke(ink, 0.5);
            pen.circle({x, y}, 0.5).fill(ink);
        }
}

}  // namespace art
