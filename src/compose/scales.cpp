// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/scales.h"

#include <algorithm>
#include <cmath>

namespace qw::compose {

namespace {

struct Marks {
    Length step;        ///< between neighbours
    int numbered;       ///< so many steps to a number
    int number_by;      ///< what a numbered step counts
};

Marks marks_of(UnitSystem system) {
    return system == UnitSystem::metric ? Marks{Length::mm(1), 10, 10} : Marks{Length::inches(1.0 / 16), 16, 1};
}

/// Taller for rounder values: 10, 5, 1 mm; 1, 1/2, 1/4, 1/8, 1/16 in.
Length height_of(UnitSystem system, int i) {
    if (system == UnitSystem::metric) return i % 10 == 0 ? Length::mm(5.5) : i % 5 == 0 ? Length::mm(4) : Length::mm(2.5);
    return i % 16 == 0 ? Length::mm(5.5) : i % 8 == 0 ? Length::mm(4.4) : i % 4 == 0 ? Length::mm(3.5) : i % 2 == 0 ? Length::mm(2.6) : Length::mm(1.8);
}

}  // namespace

void ruler_across(Canvas& canvas, Point zero, UnitSystem system, int count) {
    const Marks marks = marks_of(system);
    const int last = count * marks.numbered;
    canvas.line(zero, {zero.x + marks.step * last, zero.y}, weight::line);
    for (int i = 0; i <= last; ++i) {
        const Length x = zero.x + marks.step * i, top = zero.y + height_of(system, i);
        const bool numbered = i % marks.numbered == 0;
        canvas.line({x, zero.y}, {x, top}, numbered ? weight::line : weight::hair);
        if (numbered)
            canvas.words({x, top + Length::mm(1)}, std::to_string(i / marks.numbered * marks.number_by), setting::small, Canvas::Anchor::middle);
    }
}

void gauge_up(Canvas& canvas, Point low, Length length) {
    const Length half = Length::mm(3), high = low.y + length;
    canvas.line(low, {low.x, high}, weight::heavy);
    for (const Length y : {low.y, high}) canvas.line({low.x - half, y}, {low.x + half, y}, weight::line);
}

Point behind(Point front, Size sheet, Duplex turned) {
    if (turned == Duplex::flip_short_edge) return {front.x, sheet.height - front.y};
    return {sheet.width - front.x, front.y};
}

void register_cross(Canvas& canvas, Point c, std::optional<Duplex> back_turned) {
    canvas.line({c.x - register_arm, c.y}, {c.x + register_arm, c.y}, weight::hair);
    canvas.line({c.x, c.y - register_arm}, {c.x, c.y + register_arm}, weight::hair);
    // Turned over the long edge, left and right change places, so only the marks above must go below to be seen there
    // from the front; over the short edge, head and tail change places, so only those at the right must go left.
    const Length up = back_turned == Duplex::flip_long_edge ? -Length::mm(1) : Length::mm(1);
    const Length aside = back_turned == Duplex::flip_short_edge ? -Length::mm(1) : Length::mm(1);
    const int count = static_cast<int>(register_reach / register_step + 0.5);
    for (int i = -count; i <= count; ++i) {
        if (i == 0) continue;
        const Length at = register_step * i;
        // Never taller than they are far from the centre, so that the marks of the two arms do not cross.
        const double tall = std::min(i % 10 == 0 ? 2.6 : i % 2 == 0 ? 1.8 : 1.0, std::abs(at.in_mm()) * 0.9);
        canvas.line({c.x + at, c.y}, {c.x + at, c.y + up * tall}, weight::hair);
        canvas.line({c.x, c.y + at}, {c.x + aside * tall, c.y + at}, weight::hair);
    }
    canvas.circle(c, Length::mm(0.9), weight::hair);
}

void grey_strip(Canvas& canvas, Point top_left, Length width) {
    constexpr int fields = 11;
    const Length field = width / fields, height = Length::mm(6);
    for (int i = 0; i < fields; ++i) {
        const Rect box = Rect::at({top_left.x + field * i, top_left.y - height}, {field, height});
        canvas.fill(box, 1.0 - i / 10.0);
        canvas.words({box.centre().x, box.bottom - Length::mm(3.4)}, std::to_string(i * 10) + " %", setting::small, Canvas::Anchor::middle);
    }
    canvas.frame({top_left.x, top_left.y - height, top_left.x + width, top_left.y}, weight::hair);
}

}  // namespace qw::compose
