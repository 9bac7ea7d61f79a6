// SPDX-License-Identifier: GPL-3.0-or-later
#include "pen.h"

#include <algorithm>

#include "leaf.h"

namespace art {
namespace {

// Weights stay what they are when a motif is drawn larger or smaller, so the scale is taken out.
double weight(cairo_t* c, double points) {
    double dx = 1, dy = 0;
    cairo_user_to_device_distance(c, &dx, &dy);
    const bool pdf = cairo_surface_get_type(cairo_get_target(c)) == CAIRO_SURFACE_TYPE_PDF;
    const double per_millimetre = pdf ? 1.0 / kPoint : kPixelsPerMillimetre;
    const double scale = std::sqrt(dx * dx + dy * dy) / per_millimetre;
    return std::max(points, kFinest) * kPoint / scale;
}

}  // namespace

Pen& Pen::move(Point p) {
    cairo_move_to(c_, p.x, p.y);
    return *this;
}
Pen& Pen::to(Point p) {
    cairo_line_to(c_, p.x, p.y);
    return *this;
}
Pen& Pen::curve(Point a, Point b, Point e) {
    cairo_curve_to(c_, a.x, a.y, b.x, b.y, e.x, e.y);
    return *this;
}
Pen& Pen::close() {
    cairo_close_path(c_);
    return *this;
}
Pen& Pen::line(Point a, Point b) { return move(a).to(b); }

Pen& Pen::box(const Box& b, double r) {
    if (r <= 0) {
        cairo_rectangle(c_, b.x, b.y, b.w, b.h);
        return *this;
    }
    cairo_new_sub_path(c_);
    cairo_arc(c_, b.right() - r, b.y + r, r, -kPi / 2, 0);
    cairo_arc(c_, b.right() - r, b.bottom() - r, r, 0, kPi / 2);
    cairo_arc(c_, b.x + r, b.bottom() - r, r, kPi / 2, kPi);
    cairo_arc(c_, b.x + r, b.y + r, r, kPi, 1.5 * kPi);
    return close();
}

Pen& Pen::circle(Point p, double r) {
    cairo_new_sub_path(c_);
    cairo_arc(c_, p.x, p.y, r, 0, 2 * kPi);
    return close();
}

Pen& Pen::ellipse(Point p, double rx, double ry) {
    cairo_matrix_t kept;
    cairo_get_matrix(c_, &kept);
    cairo_translate(c_, p.x, p.y);
    cairo_scale(c_, rx, ry);
    cairo_new_sub_path(c_);
    cairo_arc(c_, 0, 0, 1, 0, 2 * kPi);
    cairo_close_path(c_);
    cairo_set_matrix(c_, &kept);
    return *this;
}

Pen& Pen::arc(Point p, double r, double from, double to) {
    cairo_arc(c_, p.x, p.y, r, (from - 90) * kPi / 180, (to - 90) * kPi / 180);
    return *this;
}

Pen& Pen::poly(const Path& points, bool closed) {
    for (std::size_t i = 0; i < points.size(); ++i) i == 0 ? move(points[i]) : to(points[i]);
    return closed && !points.empty() ? close() : *this;
}

Pen& Pen::smooth(const Path& p, bool closed) {
    const int n = static_cast<int>(p.size());
    if (n < 3) return poly(p, closed);
    const auto at = [&](int i) {
        return closed ? p[static_cast<std::size_t>((i % n + n) % n)]
                      : p[static_cast<std::size_t>(std::clamp(i, 0, n - 1))];
    };
    move(at(0));
    for (int i = 0; i < (closed ? n : n - 1); ++i) {
        const Point a = at(i) + (at(i + 1) - at(i - 1)) * (1.0 / 6);
        const Point b = at(i + 1) - (at(i + 2) - at(i)) * (1.0 / 6);
        curve(a, b, at(i + 1));
    }
    return closed ? close() : *this;
}

Pen& Pen::fill(Colour k, bool keep) {
    cairo_set_source_rgb(c_, k.r, k.g, k.b);
    keep ? cairo_fill_preserve(c_) : cairo_fill(c_);
    return *this;
}

Pen& Pen::stroke(Colour k, double points, bool keep) {
    cairo_set_source_rgb(c_, k.r, k.g, k.b);
    cairo_set_line_width(c_, weight(c_, points));
    keep ? cairo_stroke_preserve(c_) : cairo_stroke(c_);
    return *this;
}

Pen& Pen::dashed(Colour k, double points, double on, double off) {
    const double pattern[] = {on, off};
    cairo_set_dash(c_, pattern, 2, 0);
    stroke(k, points);
    cairo_set_dash(c_, nullptr, 0, 0);
    return *this;
}

Pen& Pen::clip() {
    cairo_clip(c_);
    return *this;
}
Pen& Pen::even_odd(bool on) {
    cairo_set_fill_rule(c_, on ? CAIRO_FILL_RULE_EVEN_ODD : CAIRO_FILL_RULE_WINDING);
    return *this;
}
Pen& Pen::save() {
    cairo_save(c_);
    return *this;
}
Pen& Pen::restore() {
    cairo_restore(c_);
    return *this;
}
Pen& Pen::shift(Point by) {
    cairo_translate(c_, by.x, by.y);
    return *this;
}
Pen& Pen::turn(double degrees) {
    cairo_rotate(c_, degrees * kPi / 180);
    return *this;
}
Pen& Pen::grow(double factor) {
    cairo_scale(c_, factor, factor);
    return *this;
}

}  // namespace art
