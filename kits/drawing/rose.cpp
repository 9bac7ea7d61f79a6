// SPDX-License-Identifier: GPL-3.0-or-later
#include "rose.h"

#include <array>

namespace art {
namespace {

void ray(Pen& pen, Point c, double angle, double tip, double waist, double half, Colour dark, Colour light,
         Colour edge) {
    const Point t = bearing(c, angle, tip);
    const Point l = bearing(c, angle - half, waist), r = bearing(c, angle + half, waist);
    pen.poly({c, l, t}, true).fill(light);
    pen.poly({c, t, r}, true).fill(dark);
    pen.poly({c, l, t, r}, true).stroke(edge, 0.35);
}

void degree_ring(Pen& pen, Point c, double r, const Rose& rose) {
    pen.circle(c, r).stroke(rose.ink, 0.7);
    pen.circle(c, r * 0.955).stroke(rose.ink, 0.3);
    for (int d = 0; d<360; d += r> 25 ? 1 : 5) {
        const double inner = d % 10 == 0 ? 0.93 : d % 5 == 0 ? 0.955 : 0.975;
        pen.line(bearing(c, d, r), bearing(c, d, r * inner)).stroke(rose.ink, d % 10 ? 0.25 : 0.4);
    }
    const Type figures = sized(kTiny, std::max(4.0, r * 0.115));
    for (int d = 0; d < 360; d += 30) put_on_arc(pen, c, r * 0.86, d, std::to_string(d), figures, rose.ink);
    pen.circle(c, r * 0.84).stroke(rose.ink, 0.3);
}

}  // namespace

void draw_rose(Pen& pen, Point c, double radius, const Rose& rose) {
    const double r = rose.degrees ? radius * 0.82 : radius;
    const double lettered = rose.letters ? 0.8 : 0.98;
    pen.circle(c, rose.degrees ? radius : r * 0.5).fill(rose.light);
    if (rose.degrees) degree_ring(pen, c, radius, rose);
    pen.circle(c, r * 0.5).stroke(rose.ink, 0.3);
    pen.circle(c, r * 0.47).stroke(rose.ink, 0.3);
    for (int i = 0; i < 16; ++i)
        ray(pen, c, i * 22.5 + 11.25, r * 0.5, r * 0.17, 5.6, rose.second, rose.light, rose.ink);
    for (int i = 0; i < 8; ++i) ray(pen, c, i * 45 + 22.5, r * 0.6, r * 0.2, 12, rose.second, rose.light, rose.ink);
    for (int i = 0; i < 4; ++i) ray(pen, c, i * 90 + 45, r * 0.74, r * 0.2, 24, rose.second, rose.light, rose.ink);
    for (int i = 0; i < 4; ++i)
        ray(pen, c, i * 90, r * lettered, r * 0.19, 45, i == 0 ? rose.accent : rose.ink, rose.light,
            i == 0 ? rose.accent : rose.ink);
    pen.circle(c, r * 0.05).fill(rose.light);
    pen.circle(c, r * 0.05).stroke(rose.ink, 0.5);
    if (!rose.letters) return;
    const std::array<const char*, 4> names{"N", "E", "S", "W"};
    const Type type{"Vollkorn SemiBold", r * 0.34};
    for (int i = 0; i < 4; ++i) {
        const Point at = bearing(c, i * 90, r * 0.9);
        put(pen, {at.x, at.y + r * 0.042}, names[static_cast<std::size_t>(i)], type, i == 0 ? rose.accent : rose.ink,
            Align::centre);
    }
}

void rhumbs(Pen& pen, Point c, double reach, Colour colour, double points) {
    for (int i = 0; i < 32; ++i) pen.line(c, bearing(c, i * 11.25, reach)).stroke(colour, points);
}

}  // namespace art
