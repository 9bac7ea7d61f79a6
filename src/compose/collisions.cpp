// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace qw::compose {

namespace {

const Length slack = Length::points(0.2);  // rounding of widths

struct Segment {
    Point from, to;
};

std::vector<Segment> stroked_lines(const Page& page) {
    std::vector<Segment> all;
    for (const Item& item : page.items) {
        const auto* outline = std::get_if<Outline>(&item);
        if (!outline || !outline->stroke) continue;
        Point start, here;
        for (const auto& step : outline->steps) {
            if (const auto* move = std::get_if<Outline::Move>(&step)) start = here = move->to;
            else if (const auto* line = std::get_if<Outline::Line>(&step)) all.push_back({here, line->to}), here = line->to;
            else if (const auto* curve = std::get_if<Outline::Curve>(&step)) here = curve->to;
            else all.push_back({here, start}), here = start;
        }
    }
    return all;
}

/// Clips a segment to a rectangle (Liang and Barsky); true when some of it is inside.
bool runs_through(const Segment& s, const Rect& r) {
    if (r.empty()) return false;
    const double x = s.from.x.in_points(), y = s.from.y.in_points();
    const double dx = s.to.x.in_points() - x, dy = s.to.y.in_points() - y;
    double enter = 0, leave = 1;
    const std::array<std::pair<double, double>, 4> sides{{{-dx, x - r.left.in_points()}, {dx, r.right.in_points() - x},
                                                          {-dy, y - r.bottom.in_points()}, {dy, r.top.in_points() - y}}};
    for (const auto& [p, q] : sides) {
        if (p == 0) {
            if (q <= 0) return false;
        } else if (p < 0) {
            enter = std::max(enter, q / p);
        } else {
            leave = std::min(leave, q / p);
        }
    }
    return enter < leave;
}

bool overlap(const Rect& a, const Rect& b) { return !a.inset(slack).shared_with(b.inset(slack)).empty(); }

}  // namespace

Rect box_of(const Text& text, const type::Fonts& fonts) {
    const double w = fonts.width(text.cut, text.size, text.words).in_points();
    const double start = text.anchor == Text::Anchor::start ? 0 : text.anchor == Text::Anchor::middle ? -w / 2 : -w;
    const double low = -fonts.descent(text.cut, text.size).in_points(), high = fonts.cap_height(text.cut, text.size).in_points();
    const double angle = text.turn * std::numbers::pi / 180, c = std::cos(angle), s = std::sin(angle);
    double left = 1e9, bottom = 1e9, right = -1e9, top = -1e9;
    for (const double x : {start, start + w})
        for (const double y : {low, high}) {
            left = std::min(left, x * c - y * s), right = std::max(right, x * c - y * s);
            bottom = std::min(bottom, x * s + y * c), top = std::max(top, x * s + y * c);
        }
    return {text.at.x + Length::points(left), text.at.y + Length::points(bottom), text.at.x + Length::points(right),
            text.at.y + Length::points(top)};
}

std::vector<Collision> collisions(const Page& page, const type::Fonts& fonts, const Rect& border) {
    std::vector<std::pair<const Text*, Rect>> texts;
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<Text>(&item)) texts.emplace_back(text, box_of(*text, fonts));
    const auto lines = stroked_lines(page);
    std::vector<Collision> found;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto& [text, box] = texts[i];
        if (!border.holds(box, slack)) found.push_back({Collision::With::border, text->words, ""});
        for (std::size_t j = i + 1; j < texts.size(); ++j)
            if (overlap(box, texts[j].second)) found.push_back({Collision::With::text, text->words, texts[j].first->words});
        if (std::any_of(lines.begin(), lines.end(), [&, b = box](const Segment& s) { return runs_through(s, b.inset(slack)); }))
            found.push_back({Collision::With::line, text->words, ""});
    }
    return found;
}

}  // namespace qw::compose
