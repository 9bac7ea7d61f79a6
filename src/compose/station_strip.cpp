// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/station_strip.h"

#include "compose/callouts.h"
#include "compose/clear_drawing.h"
#include "compose/dimension.h"
#include "compose/flat_cover.h"
#include "compose/fractions.h"
#include "compose/spread.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length run_off = Length::mm(6), beyond_run = Length::mm(1.6), figure_off = Length::mm(2.5), elbow = Length::mm(5);
const Length figure_step = Length::mm(5.2), strip_gap = Length::mm(9);
const std::vector<Length> fold_line{Length::points(9), Length::points(2.5), Length::points(1.5), Length::points(2.5)};

std::vector<Length> rows_of(const Strip& strip) { return strip.rows.empty() ? std::vector<Length>{{}} : strip.rows; }
std::string shown(const Strip& strip, Length length) { return real_fractions(show(length, strip.ruler)); }

/// A hole, smaller where rows are close.
void hole(Canvas& canvas, Point centre, const Strip& strip, double smaller) {
    const Length apart = strip.rows.size() > 1 ? (strip.rows[1] - strip.rows[0]) / smaller : Length::mm(9);
    canvas.circle(centre, min(Length::mm(0.7), apart * 0.3), weight::line, 1.0);
}

void outline(Canvas& canvas, const Rect& drawn, const Strip& strip) {
    if (strip.width > Length()) canvas.frame(drawn, weight::heavy, {}, 0.92);
    else if (drawn.height() > drawn.width()) canvas.line({drawn.left, drawn.bottom}, {drawn.left, drawn.top}, weight::line, fold_line);
    else canvas.line({drawn.left, drawn.bottom}, {drawn.right, drawn.bottom}, weight::line, fold_line);
}

}  // namespace

Length width_of_distances(const Canvas& canvas, const Strip& strip) {
    Length widest;
    for (const Length station : strip.stations) widest = max(widest, canvas.width(setting::table_figure, shown(strip, station)));
    return run_off + elbow + Length::mm(1) + widest;
}

bool draw_upright_strip(Canvas& canvas, Point head, double smaller, const Strip& strip, Length low, Length high) {
    const Length half_cap = canvas.fonts().cap_height(setting::table_figure.cut, setting::table_figure.size) / 2;
    const Length wide = strip.width / smaller, run = head.x + wide + run_off;
    std::vector<Length> wanted;   // upward, as spread wants them
    for (const Length station : strip.stations) wanted.insert(wanted.begin(), head.y - station / smaller);
    auto places = spread(wanted, figure_step, low + half_cap + Length::mm(1), high - half_cap);
    if (!places) return false;
    std::reverse(places->begin(), places->end());
    const bool moved = std::any_of(strip.stations.begin(), strip.stations.end(), [&, i = 0u](Length station) mutable {
        return abs((*places)[i++] - (head.y - station / smaller)) > Length::mm(0.05);
    });
    outline(canvas, {head.x, head.y - strip.length / smaller, head.x + wide, head.y}, strip);
    canvas.line({head.x + wide + Length::mm(1), head.y}, {run + beyond_run, head.y}, weight::hair);
    Length last = head.y;
    for (std::size_t i = 0; i < strip.stations.size(); ++i) {
        const Length y = head.y - strip.stations[i] / smaller, place = (*places)[i];
        for (const Length row : rows_of(strip)) hole(canvas, {head.x + wide / 2 + row / smaller, y}, strip, smaller);
        canvas.line({head.x + wide + Length::mm(1), y}, {run + beyond_run, y}, weight::hair);
        if (moved) canvas.line({run + beyond_run, y}, {run + elbow, place}, weight::hair);
        canvas.line({run, last}, {run, y}, weight::hair);
        arrowhead(canvas, {run, y}, 0, -1);
        canvas.words({run + (moved ? elbow + Length::mm(1) : figure_off), place - half_cap}, shown(strip, strip.stations[i]), setting::table_figure);
        last = y;
    }
    return true;
}

std::optional<Length> draw_lying_strip(Canvas& canvas, const Rect& room, Length left, double smaller, const Strip& strip) {
    const Length high = strip.width / smaller, middle = room.top - high / 2;
    outline(canvas, {left, room.top - high, left + strip.length / smaller, room.top}, strip);
    std::vector<Callout> distances;
    for (const Length station : strip.stations) {
        const Length x = left + station / smaller;
        for (const Length row : rows_of(strip)) hole(canvas, {x, middle + row / smaller}, strip, smaller);
        distances.push_back({{x, room.top - high - Length::mm(1.2)}, "", shown(strip, station)});
    }
    const auto rows = draw_callouts(canvas, distances, {room.left, room.bottom, room.right, room.top - high - Length::mm(1.5)});
    if (!rows) return std::nullopt;
    return high + Length::mm(1.5) + *rows;
}

bool draw_stations(Canvas& canvas, const Rect& room, const journal::Measures& m, const texts::Passages& words) {
    std::vector<std::pair<std::string, Strip>> strips;
    const auto add = [&](const std::string& heading, const std::vector<journal::Shown>& stations, Strip strip) {
        if (stations.empty()) return;
        strip.ruler = m.ruler;
        for (const journal::Shown& station : stations) strip.stations.push_back(station.rounded);
        strips.emplace_back(words.line(heading), strip);
    };
    add("page-stations", m.page_stations, {{}, m.conditions.page.height, {}, {}, {}});
    if (!m.spine_stations.empty()) {
        const FlatCover flat = flat_cover(m);
        Strip spine{flat.spine ? flat.spine->width() : flat.panel ? flat.panel->width() : Length(), flat.size.height, {}, {}, {}};
        for (const Length row : flat.rows) spine.rows.push_back(row - flat.size.width / 2);
        add("spine-stations", m.spine_stations, spine);
    }
    if (strips.empty()) return false;
    std::vector<Way> ways;
    for (const double smaller : drawing_scales) {
        if (smaller < 1) continue;
        ways.emplace_back([&, smaller](Canvas& to) {
            Length x = room.left, longest;
            for (const auto& [heading, strip] : strips) longest = max(longest, strip.length / smaller);
            const Length middle = room.top - Length::mm(8) - longest / 2;  // holes of pages and spine fall on each other here
            for (const auto& [heading, strip] : strips) {
                to.words({x, room.top - Length::mm(3)}, heading, setting::small_strong);
                const Point head{x + Length::mm(2), middle + strip.length / smaller / 2};
                if (!draw_upright_strip(to, head, smaller, strip, room.bottom + Length::mm(5), room.top - Length::mm(5))) return false;
                x += max(Length::mm(2) + strip.width / smaller + width_of_distances(to, strip), to.width(setting::small_strong, heading)) + strip_gap;
            }
            const auto scale = texts::Model().text("scale", scale_text(smaller));
            to.words({room.left, middle - longest / 2 - Length::mm(6)}, words.line("scale", scale), setting::remark);
            return true;
        });
    }
    return draw_first_clear(canvas, room, ways);
}

}  // namespace qw::compose
