// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/dimension.h"

namespace qw::compose {

namespace {

const Length arrow_length = Length::mm(2.4), arrow_half = Length::mm(0.45);
const Length overshoot = Length::mm(1.6), stand_off = Length::mm(1), text_gap = Length::mm(1.4), outside = Length::mm(6);

/// A coordinate system in which both directions are the same work: `along` the dimension, `off` away from the thing.
struct Axis {
    bool across;
    Point at(Length along, Length off) const { return across ? Point{along, off} : Point{off, along}; }
};

void extension(Canvas& canvas, const Axis& axis, Length along, Length from, Length line) {
    const double way = from < line ? 1 : -1;
    canvas.line(axis.at(along, from + stand_off * way), axis.at(along, line + overshoot * way), weight::hair);
}

void figure_at(Canvas& canvas, const Axis& axis, Length along, Length off, const std::string& figure, const Setting& setting) {
    const Length half_cap = canvas.fonts().cap_height(setting.cut, setting.size) / 2;
    if (axis.across) canvas.words({along, off - half_cap}, figure, setting, Canvas::Anchor::middle);
    else canvas.words({off + half_cap, along}, figure, setting, Canvas::Anchor::middle, 90);
}

void dimension(Canvas& canvas, const Axis& axis, Length a, Length b, Length off, Length from, const std::string& figure, const Setting& setting) {
    extension(canvas, axis, a, from, off);
    extension(canvas, axis, b, from, off);
    const int dx = axis.across ? 1 : 0, dy = axis.across ? 0 : 1;
    const Length text = canvas.width(setting, figure) + text_gap * 2, middle = (a + b) / 2;
    if (figure_in_line(canvas, b - a, figure, setting)) {
        canvas.line(axis.at(a, off), axis.at(middle - text / 2, off), weight::hair);
        canvas.line(axis.at(middle + text / 2, off), axis.at(b, off), weight::hair);
        arrowhead(canvas, axis.at(a, off), -dx, -dy);
        arrowhead(canvas, axis.at(b, off), dx, dy);
        figure_at(canvas, axis, middle, off, figure, setting);
        return;
    }
    canvas.line(axis.at(a - outside, off), axis.at(a, off), weight::hair);
    canvas.line(axis.at(b, off), axis.at(b + outside, off), weight::hair);
    arrowhead(canvas, axis.at(a, off), dx, dy);
    arrowhead(canvas, axis.at(b, off), -dx, -dy);
    const Length lift = canvas.fonts().cap_height(setting.cut, setting.size) / 2 + overshoot + stand_off;
    figure_at(canvas, axis, middle, from < off ? off + lift : off - lift, figure, setting);
}

}  // namespace

bool figure_in_line(const Canvas& canvas, Length dimension, const std::string& figure, const Setting& setting) {
    return dimension >= canvas.width(setting, figure) + text_gap * 2 + arrow_length * 2.5;
}

void arrowhead(Canvas& canvas, Point tip, int dx, int dy) {
    const Length back_x = tip.x - arrow_length * dx, back_y = tip.y - arrow_length * dy;
    canvas.polygon({tip, {back_x - arrow_half * dy, back_y + arrow_half * dx}, {back_x + arrow_half * dy, back_y - arrow_half * dx}}, 0);
}

void dimension_across(Canvas& canvas, Length x1, Length x2, Length y, Length from, const std::string& figure, const Setting& setting) {
    dimension(canvas, Axis{true}, x1, x2, y, from, figure, setting);
}

void dimension_up(Canvas& canvas, Length x, Length y1, Length y2, Length from, const std::string& figure, const Setting& setting) {
    dimension(canvas, Axis{false}, y1, y2, x, from, figure, setting);
}

void leader(Canvas& canvas, Point dot, Point to) {
    canvas.circle(dot, Length::mm(0.5), std::nullopt, 0);
    canvas.line(dot, to, weight::hair);
}

}  // namespace qw::compose
