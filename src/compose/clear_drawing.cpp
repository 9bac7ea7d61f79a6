// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/clear_drawing.h"

#include "compose/collisions.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

namespace qw::compose {

namespace {

/// Around all points of an outline, those that bend a curve with them.
Rect box_of(const Outline& outline) {
    std::vector<Point> points;
    for (const auto& step : outline.steps) {
        if (const auto* move = std::get_if<Outline::Move>(&step)) points.push_back(move->to);
        else if (const auto* line = std::get_if<Outline::Line>(&step)) points.push_back(line->to);
        else if (const auto* curve = std::get_if<Outline::Curve>(&step)) points.insert(points.end(), {curve->control1, curve->control2, curve->to});
    }
    if (points.empty()) return {};
    Rect box{points[0].x, points[0].y, points[0].x, points[0].y};
    for (const Point& p : points) box = {min(box.left, p.x), min(box.bottom, p.y), max(box.right, p.x), max(box.top, p.y)};
    return box;
}

bool clear(const Page& page, const type::Fonts& fonts, const Rect& room) {
    if (!collisions(page, fonts, room).empty()) return false;
    std::vector<Rect> dark;
    for (const Item& item : page.items)
        if (const auto* outline = std::get_if<Outline>(&item)) {
            const Rect box = box_of(*outline);
            if (!room.holds(box, Length::mm(0.01))) return false;
            if (outline->fill && *outline->fill < 0.5) dark.push_back(box);
        }
    return std::none_of(page.items.begin(), page.items.end(), [&](const Item& item) {
        const auto* text = std::get_if<Text>(&item);
        return text && std::any_of(dark.begin(), dark.end(), [&](const Rect& r) { return !r.shared_with(box_of(*text, fonts)).empty(); });
    });
}

}  // namespace

bool draw_first_clear(Canvas& canvas, const Rect& room, const std::vector<Way>& ways) {
    for (const Way& draw : ways) {
        Canvas trial(canvas.size(), canvas.fonts());
        if (!draw(trial) || !clear(std::move(trial).finish(), canvas.fonts(), room)) continue;
        return draw(canvas);
    }
    return false;
}

std::string scale_text(double smaller) {
    char text[24];
    if (smaller < 1) std::snprintf(text, sizeof text, "%g : 1", std::round(100 / smaller) / 100);
    else std::snprintf(text, sizeof text, "1 : %g", smaller);
    return text;
}

}  // namespace qw::compose
