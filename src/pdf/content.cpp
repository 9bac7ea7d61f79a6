// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/content.h"

#include "pdf/numbers.h"

#include <algorithm>

namespace qw::pdf {

namespace {

std::string shade(compose::Grey grey) { return number(std::clamp(grey, 0.0, 1.0)); }

struct Steps {
    std::string& text;
    void operator()(const compose::Outline::Move& move) const { text += numbers(move.to) + " m\n"; }
    void operator()(const compose::Outline::Line& line) const { text += numbers(line.to) + " l\n"; }
    void operator()(const compose::Outline::Curve& curve) const {
        text += numbers(curve.control1) + " " + numbers(curve.control2) + " " + numbers(curve.to) + " c\n";
    }
    void operator()(const compose::Outline::Close&) const { text += "h\n"; }
};

/// Writes an operator only when its operand is not what already holds.
void change(std::string& text, std::string& now, const std::string& wanted, const char* with) {
    if (now == wanted) return;
    now = wanted;
    text += wanted + with;
}

}  // namespace

void Content::object(const std::string& name, const Matrix& place, const Rect& clip, const compose::Shape& shape) {
    if (clip.empty()) return;
    text_ += "q " + numbers(Point{clip.left, clip.bottom}) + " " + number(clip.width()) + " " + number(clip.height()) + " re W n\n";
    if (!shape.empty()) clip_to(shape);
    text_ += numbers(place) + " cm /" + name + " Do Q\n";
}

/// All rings are one path, so that the nonzero rule sees their holes; W cuts what `re` has left (ISO 32000-1 8.5.4).
void Content::clip_to(const compose::Shape& shape) {
    for (const std::vector<Point>& ring : shape) {
        for (std::size_t i = 0; i < ring.size(); ++i) text_ += numbers(ring[i]) + (i == 0 ? " m\n" : " l\n");
        if (!ring.empty()) text_ += "h\n";
    }
    text_ += "W n\n";
}

void Content::outline(const compose::Outline& outline) {
    if (outline.steps.empty() || (!outline.stroke && !outline.fill)) return;
    if (outline.fill) fill_grey(*outline.fill);
    if (outline.stroke) stroke_state(*outline.stroke, outline.dash, outline.stroke_grey);
    for (const auto& step : outline.steps) std::visit(Steps{text_}, step);
    text_ += outline.fill && outline.stroke ? "B\n" : outline.fill ? "f\n" : "S\n";
}

void Content::line(const std::string& font, const std::string& codes, const Matrix& start, Length size, compose::Grey grey) {
    fill_grey(grey);
    text_ += "BT /" + font + " " + number(size) + " Tf " + numbers(start) + " Tm <" + codes + "> Tj ET\n";
}

void Content::fill_grey(compose::Grey grey) { change(text_, fill_grey_, shade(grey), " g\n"); }

void Content::stroke_state(Length width, const std::vector<Length>& dash, compose::Grey grey) {
    std::string pattern = "[";
    for (const Length part : dash) pattern += (pattern.size() > 1 ? " " : "") + number(part);
    change(text_, stroke_grey_, shade(grey), " G\n");
    change(text_, width_, number(width), " w\n");
    change(text_, dash_, pattern + "]", " 0 d\n");
}

}  // namespace qw::pdf
