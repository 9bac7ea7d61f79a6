// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/gauge_cards.h"

#include "compose/callouts.h"
#include "compose/named_figure.h"

#include <algorithm>
#include <numbers>

namespace qw::compose {

namespace {

bool shrinks(const journal::Measures& m, const std::string& name) {
    const auto& all = m.journal->lengths;
    return std::any_of(all.begin(), all.end(), [&](const kit::NamedLength& l) { return l.name == name && l.printed; });
}

UnitSystem other_than(UnitSystem system) { return system == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }

/// Title, the own figure large, the other one small, each centred on a line of its own.
void step_words(Canvas& canvas, Point top, const GaugeLength& length) {
    Length y = top.y;
    for (const std::string& line : wrapped(canvas.fonts(), setting::small_strong, step_column - Length::mm(2), length.title)) {
        y -= setting::small_strong.leading;
        canvas.words({top.x, y}, line, setting::small_strong, Canvas::Anchor::middle);
    }
    canvas.words({top.x, y - Length::mm(5)}, length.own, setting::table_figure, Canvas::Anchor::middle);
    canvas.words({top.x, y - Length::mm(9.2)}, length.other, setting::other, Canvas::Anchor::middle);
}

}  // namespace

std::vector<GaugeLength> gauge_lengths(const journal::Measures& m, const std::vector<std::string>& names, const texts::Passages& words) {
    const Length least = Length::mm(0.5), most = Length::mm(30);
    std::vector<GaugeLength> all;
    for (const std::string& name : names) {
        const Length length = m.named_length(name);
        if (length < least || length > most || shrinks(m, name)) continue;
        const Rounding way = name == "corner-cut" ? Rounding::up : Rounding::nearest;  // the paper must cover the board's edge
        all.push_back({name, words.line("length-" + name), length, named_figure(m, name, m.ruler, way), named_figure(m, name, other_than(m.ruler), way)});
    }
    return all;
}

Size draw_angle_gauge(Canvas& canvas, Point at, Length leg, const GaugeLength& turn_in, const GaugeLength* corner, const texts::Passages& words) {
    const Length t = turn_in.length, long_leg = max(leg, t + Length::mm(30));
    const Point in{at.x + t, at.y - t};  // the board's corner; the board lies to the right of it and below
    const auto place = [&](Length x, Length y) { return Point{in.x + x, in.y + y}; };
    canvas.closed_line({place({}, {}), place(long_leg, {}), place(long_leg, t), place(-t, t), place(-t, -long_leg), place({}, -long_leg)}, weight::heavy);
    const Length baseline = in.y + t / 2 + Length::mm(0.8), x = in.x + t + Length::mm(1);
    draw_words_and_figure(canvas, {x, baseline}, turn_in.title, turn_in.own);
    canvas.words({x, baseline - Length::mm(4.4)}, turn_in.other, setting::other);
    canvas.words(place(Length::mm(4), -Length::mm(22)), words.line("board-here"), setting::remark);
    if (!corner) return {t + long_leg, t + long_leg};
    const Length reach = t - corner->length * std::numbers::sqrt2;  // where the cut meets the outer edges, from the board's edges
    canvas.line(place(-t, -reach), place(reach, t), weight::line, {Length::points(4), Length::points(2.5)});
    const Length half = corner->length / std::numbers::sqrt2 / 2;
    const Point dot = place(-half, half), foot = place(Length::mm(3), -Length::mm(6));
    canvas.circle(dot, Length::mm(0.5), std::nullopt, 0);
    canvas.line(dot, foot, weight::hair);
    draw_words_and_figure(canvas, {foot.x + Length::mm(1), foot.y - Length::mm(3.6)}, corner->title, corner->own);
    canvas.words({foot.x + Length::mm(1), foot.y - Length::mm(8)}, corner->other, setting::other);
    return {t + long_leg, t + long_leg};
}

Size draw_step_card(Canvas& canvas, Point at, const std::vector<GaugeLength>& lengths) {
    const Length notch = Length::mm(12), side = (step_column - notch) / 2;
    Length deepest;
    for (const GaugeLength& length : lengths) deepest = max(deepest, length.length);
    std::size_t lines = 1;
    for (const GaugeLength& length : lengths)
        lines = std::max(lines, wrapped(canvas.fonts(), setting::small_strong, step_column - Length::mm(2), length.title).size());
    const Length height = deepest + Length::mm(12) + setting::small_strong.leading * static_cast<double>(lines);
    const Size size{step_column * static_cast<double>(lengths.size()), height};
    std::vector<Point> corners{{at.x, at.y - height}, at};
    Length x = at.x;
    for (const GaugeLength& length : lengths) {
        const Length floor = at.y - length.length;
        corners.insert(corners.end(), {{x + side, at.y}, {x + side, floor}, {x + side + notch, floor}, {x + side + notch, at.y}});
        step_words(canvas, {x + step_column / 2, at.y - deepest - Length::mm(0.6)}, length);
        x += step_column;
    }
    corners.push_back({x, at.y});
    corners.push_back({x, at.y - height});
    canvas.closed_line(corners, weight::heavy);
    return size;
}

}  // namespace qw::compose
