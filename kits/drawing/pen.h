// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing hand over one Cairo surface: paths in millimetres, line weights in points.
#pragma once

#include <cairo.h>

#include "geometry.h"
#include "palette.h"

namespace art {

inline constexpr double kFinest = 0.25;  // points; thinner lines break up on home printers

// Does not own the context.
class Pen {
public:
    explicit Pen(cairo_t* context) : c_(context) {}
    cairo_t* context() const { return c_; }

    // Paths are added to until a fill or a stroke uses them up.
    Pen& move(Point p);
    Pen& to(Point p);
    Pen& curve(Point a, Point b, Point end);
    Pen& close();
    Pen& line(Point a, Point b);
    Pen& box(const Box& b, double radius = 0);
    Pen& circle(Point centre, double radius);
    Pen& ellipse(Point centre, double rx, double ry);
    // Degrees clockwise from north, as bearings are; joins what the path holds already.
    Pen& arc(Point centre, double radius, double from, double to);
    Pen& poly(const Path& points, bool closed);
    // A curve through all points.
    Pen& smooth(const Path& points, bool closed);

    Pen& fill(Colour colour, bool keep = false);
    Pen& stroke(Colour colour, double points, bool keep = false);
    Pen& dashed(Colour colour, double points, double on, double off);
    Pen& clip();
    Pen& even_odd(bool on);

    Pen& save();
    Pen& restore();
    Pen& shift(Point by);
    Pen& turn(double degrees);
    Pen& grow(double factor);

private:
    cairo_t* c_;
};

// Keeps the state of a pen for one scope.
class Hold {
public:
    explicit Hold(Pen& pen) : pen_(pen) { pen_.save(); }
    ~Hold() { pen_.restore(); }
    Hold(const Hold&) = delete;
    Hold& operator=(const Hold&) = delete;

private:
    Pen& pen_;
};

}  // namespace art
