// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/drawing_alone.h"

#include "compose/collisions.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdio>

namespace qw::test {

using namespace compose;
using namespace literals;

namespace {

std::vector<Point> points_of_outline(const Outline& outline) {
    std::vector<Point> points;
    for (const auto& step : outline.steps) {
        if (const auto* move = std::get_if<Outline::Move>(&step)) points.push_back(move->to);
        else if (const auto* line = std::get_if<Outline::Line>(&step)) points.push_back(line->to);
        else if (const auto* curve = std::get_if<Outline::Curve>(&step)) points.push_back(curve->to);
    }
    return points;
}

}  // namespace

const std::vector<double> print_sizes{103, 100, 91, 77, 64, 50, 41, 30};

const texts::Passages& drawing_words() {
    static const auto words = passages_of(words_only(), "drawings");
    return words;
}

std::vector<const Text*> Drawing::texts() const {
    std::vector<const Text*> all;
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<Text>(&item)) all.push_back(text);
    return all;
}

bool Drawing::says(const std::string& words) const {
    const auto all = texts();
    return std::any_of(all.begin(), all.end(), [&](const Text* t) { return t->words == words; });
}

Drawing drawing(Drawn draw, const Rect& room, const Paper& paper, const journal::Measures& measures) {
    Canvas canvas(paper.size, fonts());
    Drawing made;
    made.there = draw(canvas, room, measures, drawing_words());
    made.page = std::move(canvas).finish();
    return made;
}

Rect box_of_outline(const Outline& outline) {
    const auto points = points_of_outline(outline);
    Rect box{points[0].x, points[0].y, points[0].x, points[0].y};
    for (const Point& p : points) box = {min(box.left, p.x), min(box.bottom, p.y), max(box.right, p.x), max(box.top, p.y)};
    return box;
}

void check_clear(const Drawing& made, const Rect& room) {
    for (const Collision& c : collisions(made.page, fonts(), room)) {
        CAPTURE(c.words, c.other, static_cast<int>(c.with));
        FAIL_CHECK("a label collides");
    }
    std::vector<Rect> dark;
    for (const Item& item : made.page.items) {
        const auto* outline = std::get_if<Outline>(&item);
        if (!outline) continue;
        CHECK(room.holds(box_of_outline(*outline), 0.02_mm));
        if (outline->fill && *outline->fill < 0.5) dark.push_back(box_of_outline(*outline));
        if (outline->stroke) CHECK((*outline->stroke == weight::hair || *outline->stroke == weight::line || *outline->stroke == weight::heavy));
    }
    for (const Text* text : made.texts()) {
        CAPTURE(text->words);
        CHECK(text->size >= 8.5_pt);
        CHECK(text->grey == 0);
        CHECK(fonts().missing(text->cut, text->words).empty());
        for (const Rect& shape : dark) CHECK(shape.shared_with(box_of(*text, fonts()).inset(0.05_mm)).empty());
    }
}

std::vector<Rect> rooms(const Paper& paper) {
    const Rect all = SheetMargins::content(paper.size);
    std::vector<Rect> rooms;
    for (const double part : {0.9, 0.62}) rooms.push_back({all.left, all.top - all.height() * part, all.right, all.top});
    return rooms;
}

std::vector<std::pair<Point, Point>> lines_of(const Page& page, Length weight, bool dashed) {
    std::vector<std::pair<Point, Point>> all;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight && o->steps.size() == 2 && o->dash.empty() == !dashed)
            all.emplace_back(std::get<Outline::Move>(o->steps[0]).to, std::get<Outline::Line>(o->steps[1]).to);
    return all;
}

double stated_scale(const Drawing& made) {
    for (const Text* text : made.texts()) {
        double a = 0, b = 0;
        if (std::sscanf(text->words.c_str(), "Drawn at %lf : %lf", &a, &b) == 2) return b / a;
    }
    return 0;
}

}  // namespace qw::test
