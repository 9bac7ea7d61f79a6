// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/region.h"

#include <cmath>

namespace qw::parts {

/// Vectors for the arithmetic inside this room, in millimetres. They cross none of its interfaces.
struct Vec {
    double x = 0, y = 0;

    static Vec of(Point p) { return {p.x.in_mm(), p.y.in_mm()}; }
    Point point() const { return {Length::mm(x), Length::mm(y)}; }
    friend Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
    friend Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
    friend Vec operator*(Vec a, double k) { return {a.x * k, a.y * k}; }
    double length() const { return std::hypot(x, y); }
    /// Turned a quarter counter-clockwise.
    Vec left() const { return {-y, x}; }
};

inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y; }
/// Positive when b points to the left of a.
inline double cross(Vec a, Vec b) { return a.x * b.y - a.y * b.x; }
inline Vec unit(Vec a) { return a * (1 / a.length()); }
inline double distance(Point a, Point b) { return (Vec::of(a) - Vec::of(b)).length(); }

/// How far from the line through `through` along the unit vector `along`; positive on its left.
inline double beside(Vec point, Vec through, Vec along) { return cross(along, point - through); }

/// The rectangle beside a line: from `from` to `to`, `deep` mm to the left (to the right when negative).
Region strip_beside(Vec from, Vec to, double deep);

/// Everything that a region passes on its way to where it is moved by (0, dy).
Region swept_up(const Region& region, Length dy);

}  // namespace qw::parts
