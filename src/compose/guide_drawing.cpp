// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_drawing.h"

#include "compose/collisions.h"
#include "compose/corner_drawing.h"
#include "compose/cover_drawing.h"
#include "compose/station_strip.h"
#include "compose/stitch_drawing.h"

namespace qw::compose {

namespace {

using DrawsStep = bool (*)(Canvas&, const Rect&, const journal::Measures&, const texts::Passages&);

DrawsStep drawer_of(const std::string& drawing) {
    if (drawing == "cover") return draw_cover;
    if (drawing == "corner") return draw_corner;
    if (drawing == "stitch") return draw_stitch;
    if (drawing == "stations") return draw_stations;
    return nullptr;
}

std::vector<Point> points_of(const Outline& outline) {
    std::vector<Point> points;
    for (const auto& step : outline.steps) {
        if (const auto* move = std::get_if<Outline::Move>(&step)) points.push_back(move->to);
        else if (const auto* line = std::get_if<Outline::Line>(&step)) points.push_back(line->to);
        else if (const auto* curve = std::get_if<Outline::Curve>(&step)) points.insert(points.end(), {curve->control1, curve->control2, curve->to});
    }
    return points;
}

Rect joined_boxes(const Rect& a, const Rect& b) {
    return {min(a.left, b.left), min(a.bottom, b.bottom), max(a.right, b.right), max(a.top, b.top)};
}

std::vector<std::string> texts_on(const Page& page) {
    std::vector<std::string> all;
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<Text>(&item)) all.push_back(text->words);
    return all;
}

}  // namespace

std::optional<Rect> ink_box(const Page& page, const type::Fonts& fonts) {
    std::optional<Rect> box;
    const auto add = [&](const Rect& part) { box = box ? joined_boxes(*box, part) : part; };
    for (const Item& item : page.items) {
        if (const auto* text = std::get_if<Text>(&item)) add(box_of(*text, fonts));
        if (const auto* outline = std::get_if<Outline>(&item))
            for (const Point& p : points_of(*outline)) add({p.x, p.y, p.x, p.y});
    }
    return box;
}

bool has_step_drawing(const SheetContext& context, const std::string& drawing, const journal::Measures& measures) {
    const DrawsStep draws = drawer_of(drawing);
    const Size ample{Length::mm(400), Length::mm(400)};
    Canvas trial(ample, context.fonts);
    return draws && draws(trial, Rect::of(ample), measures, passages_of(context.pipeline, "drawings"));
}

std::optional<StepDrawing> step_drawing(const SheetContext& context, const std::string& drawing, const journal::Measures& measures, Length width,
                                        Length liked, Length most) {
    const DrawsStep draws = drawer_of(drawing);
    if (!draws) return std::nullopt;
    const texts::Passages words = passages_of(context.pipeline, "drawings");
    for (const double more : {1.0, 1.25, 1.5, 2.0, 3.0}) {
        const Size room{width, min(liked * more, most)};
        // It is drawn once to see how much of the room it takes, and in place with all of it moved.
        Canvas trial(room, context.fonts);
        if (!draws(trial, Rect::of(room), measures, words)) continue;
        const Page page = std::move(trial).finish();
        const auto box = ink_box(page, context.fonts);
        if (!box) continue;
        return StepDrawing{box->size(),
                           [=, &measures](Canvas& canvas, Point at) {
                               draws(canvas, Rect::of(room).moved(at.x - box->left, at.y - box->top), measures, words);
                           },
                           texts_on(page)};
    }
    return std::nullopt;
}

}  // namespace qw::compose
