// SPDX-License-Identifier: GPL-3.0-or-later
#include "knots.h"

#include <algorithm>
#include <stdexcept>

namespace art {
namespace {

struct Meeting {
    std::size_t strand;
    double along;
    int crossing;
};

struct Laid {
    std::vector<Path> curves;
    std::vector<std::vector<Meeting>> meetings;  // by strand, in order
};

bool cross(Point a, Point b, Point c, Point d, double& t, double& u) {
    const Point r = b - a, s = d - c, q = c - a;
    const double den = r.x * s.y - r.y * s.x;
    if (std::abs(den) < 1e-12) return false;
    t = (q.x * s.y - q.y * s.x) / den;
    u = (q.x * r.y - q.y * r.x) / den;
    return t >= 0 && t < 1 && u >= 0 && u < 1;
}

struct Piece {
    std::size_t strand;
    Point a, b;
    double from;
};

std::vector<Piece> pieces_of(const std::vector<Path>& curves) {
    std::vector<Piece> out;
    for (std::size_t s = 0; s < curves.size(); ++s) {
        double along = 0;
        for (std::size_t i = 1; i < curves[s].size(); ++i) {
            out.push_back({s, curves[s][i - 1], curves[s][i], along});
            along += length(curves[s][i] - curves[s][i - 1]);
        }
    }
    return out;
}

Laid lay_out(const Knot& knot, const KnotStyle& style, Point centre) {
    Laid laid;
    for (const Strand& s : knot.strands) {
        Path p;
        for (const Point q : s.points) p.push_back(centre + q * style.scale);
        laid.curves.push_back(curve_through(p));
    }
    laid.meetings.resize(laid.curves.size());
    const std::vector<Piece> pieces = pieces_of(laid.curves);
    int count = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        for (std::size_t j = i + 2; j < pieces.size(); ++j) {
            double t = 0, u = 0;
            const Piece &p = pieces[i], &q = pieces[j];
            if (!cross(p.a, p.b, q.a, q.b, t, u)) continue;
            laid.meetings[p.strand].push_back({p.strand, p.from + t * length(p.b - p.a), count});
            laid.meetings[q.strand].push_back({q.strand, q.from + u * length(q.b - q.a), count++});
        }
    for (auto& m : laid.meetings)
        std::sort(m.begin(), m.end(), [](const Meeting& a, const Meeting& b) { return a.along < b.along; });
    return laid;
}

void verify(const Knot& knot, const Laid& laid) {
    std::vector<int> over(256, 0), met(256, 0);
    for (std::size_t s = 0; s < knot.strands.size(); ++s) {
        if (laid.meetings[s].size() != knot.strands[s].over.size())
            throw std::logic_error(knot.name + ": strand " + std::to_string(s) + " crosses " +
                                   std::to_string(laid.meetings[s].size()) + " times");
        for (std::size_t i = 0; i < laid.meetings[s].size(); ++i) {
            const auto k = static_cast<std::size_t>(laid.meetings[s][i].crossing);
            over[k] += knot.strands[s].over[i] == 'o';
            ++met[k];
        }
    }
    for (std::size_t k = 0; k < met.size(); ++k)
        if (met[k] == 2 && over[k] != 1)
            throw std::logic_error(knot.name + ": crossing " + std::to_string(k) + " contradicts itself");
}

void whip(Pen& pen, const Path& path, double along, double sign, const Rope& rope, Colour colour) {
    const Point from = point_at(path, along), to = point_at(path, along + sign * rope.thickness * 0.7);
    pen.line(from, to).stroke(colour, (rope.thickness + 0.15) / kPoint);
}

}  // namespace

void draw_knot(Pen& pen, Point centre, const Knot& knot, const KnotStyle& style) {
    const Laid laid = lay_out(knot, style, centre);
    verify(knot, laid);
    for (std::size_t s = 0; s < laid.curves.size(); ++s) {
        Rope rope = style.rope;
        if (s == 1) rope.fill = style.second;
        draw_rope(pen, laid.curves[s], rope, 0, length_of(laid.curves[s]) * style.shown);
    }
    for (std::size_t s = 0; s < laid.curves.size(); ++s) {
        Rope rope = style.rope;
        if (s == 1) rope.fill = style.second;
        const double total = length_of(laid.curves[s]), end = total * style.shown;
        for (std::size_t i = 0; i < laid.meetings[s].size(); ++i) {
            const double at = laid.meetings[s][i].along;
            if (knot.strands[s].over[i] != 'o' || at > end) continue;
            const double half = rope.thickness * 0.95;
            draw_rope_above(pen, laid.curves[s], rope, style.paper, std::max(at - half, 0.0), std::min(at + half, end));
        }
        whip(pen, laid.curves[s], end, -1, rope, style.whipping);
        if (knot.strands.size() > 1) whip(pen, laid.curves[s], 0, 1, rope, style.whipping);
    }
}

Knot thumb_knot() {
    return {"Thumb knot",
            {{{{-4.4, 0.9},
               {-1.8, 0.95},
               {0.1, 0.75},
               {1.6, 0.0},
               {1.8, -1.5},
               {0.2, -2.4},
               {-1.5, -1.8},
               {-1.7, -0.2},
               {-1.1, 1.6},
               {-0.2, 2.1},
               {0.35, 1.2},
               {0.1, -0.1},
               {0.7, -1.05},
               {2.2, -1.2},
               {4.4, -1.15}},
              "ououou"}}};
}

Knot figure_of_eight() {
    return {"Figure of eight",
            {{{{-5.4, 0.1},
               {-3.6, 0.1},
               {-1.6, -0.1},
               {0.2, -0.9},
               {1.9, -1.3},
               {2.9, 0},
               {1.9, 1.25},
               {0.3, 0.6},
               {-1.0, -1.05},
               {-2.3, -1.2},
               {-3.0, 0.1},
               {-2.2, 1.2},
               {-0.6, 1.25},
               {0.8, 0.55},
               {2.0, -0.05},
               {3.6, -0.1},
               {5.4, -0.1}},
              "ouououou"}}};
}

Knot reef_knot() {
    return {"Reef knot",
            {{{{-5.2, -1.0},
               {-3.2, -0.62},
               {-1.2, -0.5},
               {0, -1.0},
               {1.4, -1.4},
               {2.5, -0.9},
               {2.8, 0},
               {2.5, 0.9},
               {1.4, 1.4},
               {0, 1.0},
               {-1.2, 0.5},
               {-3.2, 0.62},
               {-5.2, 1.0}},
              "uouuou"},
             {{{5.2, -1.0},
               {3.2, -0.62},
               {1.2, -0.5},
               {0, -1.0},
               {-1.4, -1.4},
               {-2.5, -0.9},
               {-2.8, 0},
               {-2.5, 0.9},
               {-1.4, 1.4},
               {0, 1.0},
               {1.2, 0.5},
               {3.2, 0.62},
               {5.2, 1.0}},
              "ouoouo"}}};
}

Knot sheet_bend() {
    return {"Sheet bend",
            {{{{-5.2, -1.1},
               {-2.5, -1.1},
               {0.2, -1.25},
               {1.9, -0.9},
               {2.5, 0},
               {1.9, 0.9},
               {0.2, 1.25},
               {-2.5, 1.1},
               {-5.2, 1.1}},
              "ouuouo"},
             {{{5.4, 0.1},
               {3.6, 0.1},
               {1.8, 0.05},
               {0.3, -0.35},
               {-0.6, -1.6},
               {-1.7, -2.3},
               {-2.5, -1.4},
               {-2.5, 0},
               {-2.2, 1.7},
               {-1.2, 2.3},
               {-0.3, 1.6},
               {0.3, 0.4},
               {0.9, -0.9},
               {1.3, -2.5}},
              "uoouuouo"}}};
}

}  // namespace art
