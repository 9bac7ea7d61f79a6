// SPDX-License-Identifier: GPL-3.0-or-later
// Points and boxes on the canvas. Every number in this program that is a place or a length is in
// millimetres from the canvas's upper left corner, y downwards; line weights and type are in points.
#pragma once

#include <cmath>
#include <vector>

namespace art {

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kPoint = 25.4 / 72.0;

struct Point {
    double x = 0;
    double y = 0;
};

using Path = std::vector<Point>;

inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
inline Point operator*(Point a, double k) { return {a.x * k, a.y * k}; }
inline double length(Point a) { return std::sqrt(a.x * a.x + a.y * a.y); }

// The point at a bearing (degrees clockwise from north) and distance from a centre.
inline Point bearing(Point centre, double degrees, double distance) {
    const double a = degrees * kPi / 180.0;
    return {centre.x + distance * std::sin(a), centre.y - distance * std::cos(a)};
}

struct Box {
    double x = 0;
    double y = 0;
    double w = 0;
    double h = 0;
    double right() const { return x + w; }
    double bottom() const { return y + h; }
    Point centre() const { return {x + w / 2, y + h / 2}; }
    Box inset(double d) const { return {x + d, y + d, w - 2 * d, h - 2 * d}; }
    bool holds(Point p, double margin = 0) const {
        return p.x > x - margin && p.x < right() + margin && p.y > y - margin && p.y < bottom() + margin;
    }
};

}  // namespace art
