// SPDX-License-Identifier: GPL-3.0-or-later
#include "rope.h"

#include <algorithm>

namespace art {
namespace {

Point normal_at(const Path& path, double along, double total) {
    const double e = 0.15;
    const Point d = point_at(path, std::min(along + e, total)) - point_at(path, std::max(along - e, 0.0));
    const double n = std::max(length(d), 1e-9);
    return {-d.y / n, d.x / n};
}

Path stretch(const Path& path, double from, double to) {
    const int steps = std::max(2, static_cast<int>((to - from) / 0.25));
    Path out;
    for (int i = 0; i <= steps; ++i) out.push_back(point_at(path, from + (to - from) * i / steps));
    return out;
}

Path beside(const Path& path, double from, double to, double by) {
    const double total = length_of(path);
    const int steps = std::max(2, static_cast<int>((to - from) / 0.25));
    Path out;
    for (int i = 0; i <= steps; ++i) {
        const double s = from + (to - from) * i / steps;
        out.push_back(point_at(path, s) + normal_at(path, s, total) * by);
    }
    return out;
}

// The lines between strands, each an S across the rope.
void lay(Pen& pen, const Path& path, const Rope& rope, double from, double to) {
    const double total = length_of(path);
    const double pitch = rope.thickness * 0.62, lean = rope.thickness * 0.42;
    const double h = rope.thickness / 2;
    for (double s = std::ceil(from / pitch) * pitch; s < to; s += pitch) {
        const auto at = [&](double along, double off) {
            const double a = std::clamp(along, 0.0, total);
            return point_at(path, a) + normal_at(path, a, total) * off;
        };
        pen.move(at(s - lean, h)).curve(at(s - lean * 0.1, h * 0.75), at(s + lean * 0.1, -h * 0.75), at(s + lean, -h));
        pen.stroke(rope.line, rope.points * 0.8);
    }
}

}  // namespace

double length_of(const Path& path) {
    double sum = 0;
    for (std::size_t i = 1; i < path.size(); ++i) sum += length(path[i] - path[i - 1]);
    return sum;
}

Point point_at(const Path& path, double along) {
    for (std::size_t i = 1; i < path.size(); ++i) {
        const double part = length(path[i] - path[i - 1]);
        if (along <= part || i + 1 == path.size())
            return path[i - 1] + (path[i] - path[i - 1]) * (part > 0 ? along / part : 0);
        along -= part;
    }
    return path.front();
}

Path curve_through(const Path& p, bool closed) {
    const int n = static_cast<int>(p.size());
    const auto at = [&](int i) {
        return closed ? p[static_cast<std::size_t>((i % n + n) % n)]
                      : p[static_cast<std::size_t>(std::clamp(i, 0, n - 1))];
    };
    Path out{at(0)};
    for (int i = 0; i < (closed ? n : n - 1); ++i) {
        const Point a = at(i - 1), b = at(i), c = at(i + 1), d = at(i + 2);
        for (int k = 1; k <= 24; ++k) {
            const double t = k / 24.0;
            out.push_back(
                (b * 2 + (c - a) * t + (a * 2 - b * 5 + c * 4 - d) * (t * t) + (b * 3 - a - c * 3 + d) * (t * t * t)) *
                0.5);
        }
    }
    return out;
}

void draw_rope(Pen& pen, const Path& path, const Rope& rope, double from, double to) {
    if (to < 0) to = length_of(path);
    const Hold hold(pen);
    cairo_set_line_cap(pen.context(), CAIRO_LINE_CAP_BUTT);
    cairo_set_line_join(pen.context(), CAIRO_LINE_JOIN_ROUND);
    pen.poly(stretch(path, from, to), false).stroke(rope.fill, rope.thickness / kPoint);
    lay(pen, path, rope, from, to);
    for (const double side : {-0.5, 0.5})
        pen.poly(beside(path, from, to, side * rope.thickness), false).stroke(rope.line, rope.points);
}

void draw_rope_above(Pen& pen, const Path& path, const Rope& rope, Colour paper, double from, double to) {
    const double edge = rope.thickness * 0.16;
    pen.poly(stretch(path, from, to), false).stroke(paper, (rope.thickness + 2 * edge) / kPoint);
    draw_rope(pen, path, rope, from, to);
}

void rope_frame(Pen& pen, const Box& b, double r, const Rope& rope) {
    Path path;
    const auto corner = [&](double cx, double cy, double from) {
        for (int i = 0; i <= 12; ++i) path.push_back(bearing({cx, cy}, from + i * 7.5, r));
    };
    corner(b.right() - r, b.y + r, 0);
    corner(b.right() - r, b.bottom() - r, 90);
    corner(b.x + r, b.bottom() - r, 180);
    corner(b.x + r, b.y + r, 270);
    path.push_back(path.front());
    const double around = length_of(path);
    // A little further than once round, so that no end shows.
    for (std::size_t i = 1; i <= 12; ++i) path.push_back(path[i]);
    // The lay meets itself where the frame closes: choose the thickness that divides the length.
    Rope fitted = rope;
    fitted.thickness = around / std::round(around / (rope.thickness * 0.62)) / 0.62;
    draw_rope(pen, path, fitted, 3, 3 + around);
}

}  // namespace art
