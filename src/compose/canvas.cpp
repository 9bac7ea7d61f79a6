// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/canvas.h"

#include <utility>

namespace qw::compose {

Canvas::Canvas(Size paper, const type::Fonts& fonts) : fonts_(fonts) {
    page_.size = paper;
    page_.trim = page_.bleed = Rect::of(paper);
}

Length Canvas::width(const Setting& setting, const std::string& words) const {
    return fonts_.width(setting.cut, setting.size, words);
}

void Canvas::words(Point at, const std::string& words, const Setting& setting, Anchor anchor, double turn) {
    if (words.empty()) return;
    page_.items.emplace_back(std::in_place_type<Text>, Text{at, words, setting.cut, setting.size, anchor, turn, 0});
}

void Canvas::words_within(Point at, Length room, const std::string& text, const Setting& setting, Anchor anchor) {
    if (width(setting, text) <= room) return words(at, text, setting, anchor);
    std::string kept = text;
    const auto drop_character = [&] {
        while (!kept.empty() && (static_cast<unsigned char>(kept.back()) & 0xC0) == 0x80) kept.pop_back();
        if (!kept.empty()) kept.pop_back();
    };
    do {
        drop_character();
        while (kept.ends_with(' ')) kept.pop_back();
    } while (!kept.empty() && width(setting, kept + "…") > room);
    words(at, kept + "…", setting, anchor);
}

Length Canvas::paragraph(Point top_left, Length room, const std::string& text, const Setting& setting) {
    // The first baseline hangs below the top by what capitals need and half of what the leading leaves.
    const Length cap = fonts_.cap_height(setting.cut, setting.size);
    Length y = top_left.y - (setting.leading + cap) / 2;
    const auto lines = wrapped(fonts_, setting, room, text);
    for (const std::string& line : lines) {
        words({top_left.x, y}, line, setting);
        y -= setting.leading;
    }
    return setting.leading * static_cast<double>(lines.size());
}

void Canvas::line(Point from, Point to, Length weight, std::vector<Length> dash) {
    Outline outline;
    outline.steps = {Outline::Move{from}, Outline::Line{to}};
    outline.stroke = weight;
    outline.dash = std::move(dash);
    page_.items.emplace_back(std::in_place_type<Outline>, std::move(outline));
}

namespace {

Outline rectangle(const Rect& r) {
    Outline outline;
    outline.steps = {Outline::Move{{r.left, r.bottom}}, Outline::Line{{r.right, r.bottom}}, Outline::Line{{r.right, r.top}},
                     Outline::Line{{r.left, r.top}}, Outline::Close{}};
    return outline;
}

}  // namespace

void Canvas::frame(const Rect& rect, Length weight, std::vector<Length> dash, std::optional<Grey> fill) {
    Outline outline = rectangle(rect);
    outline.stroke = weight;
    outline.dash = std::move(dash);
    outline.fill = fill;
    page_.items.emplace_back(std::in_place_type<Outline>, std::move(outline));
}

void Canvas::fill(const Rect& rect, Grey grey) {
    Outline outline = rectangle(rect);
    outline.fill = grey;
    page_.items.emplace_back(std::in_place_type<Outline>, std::move(outline));
}

namespace {

Outline closed(const std::vector<Point>& corners) {
    Outline outline;
    for (const Point& corner : corners) {
        if (outline.steps.empty()) outline.steps.push_back(Outline::Move{corner});
        else outline.steps.push_back(Outline::Line{corner});
    }
    outline.steps.push_back(Outline::Close{});
    return outline;
}

}  // namespace

void Canvas::closed_line(const std::vector<Point>& corners, Length weight) {
    Outline outline = closed(corners);
    outline.stroke = weight;
    page_.items.push_back(outline);
}

void Canvas::polygon(const std::vector<Point>& corners, Grey fill) {
    Outline outline = closed(corners);
    outline.fill = fill;
    page_.items.emplace_back(std::in_place_type<Outline>, std::move(outline));
}

void Canvas::circle(Point c, Length r, std::optional<Length> weight, std::optional<Grey> fill) {
    const Length k = r * 0.5522847498;  // 4/3 · (√2 − 1): the cubic that meets a quarter circle in its middle
    Outline outline;
    outline.steps = {Outline::Move{{c.x + r, c.y}},
                     Outline::Curve{{c.x + r, c.y + k}, {c.x + k, c.y + r}, {c.x, c.y + r}},
                     Outline::Curve{{c.x - k, c.y + r}, {c.x - r, c.y + k}, {c.x - r, c.y}},
                     Outline::Curve{{c.x - r, c.y - k}, {c.x - k, c.y - r}, {c.x, c.y - r}},
                     Outline::Curve{{c.x + k, c.y - r}, {c.x + r, c.y - k}, {c.x + r, c.y}},
                     Outline::Close{}};
    outline.stroke = weight;
    outline.fill = fill;
    page_.items.emplace_back(std::in_place_type<Outline>, std::move(outline));
}

Page Canvas::finish() && { return std::move(page_); }

}  // namespace qw::compose
