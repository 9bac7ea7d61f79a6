// SPDX-License-Identifier: GPL-3.0-or-later
#include "waves.h"

#include <algorithm>

#include "chance.h"

namespace art {
namespace {

// A deep-water wave is a trochoid: points go round in circles, crests are sharper than troughs.
Point trochoid(double x, double y, double wavelength, double steepness, double phase) {
    const double k = 2 * kPi / wavelength;
    const double a = steepness / k;
    const double t = k * x + phase;
    return {x - a * std::sin(t), y - 0.8 * a * std::cos(t)};
}

struct Row {
    double y, wavelength, steepness, phase;
};

Path trace(const Row& r, double from, double to) {
    Path path;
    const double step = r.wavelength / 24;
    for (double x = from; x <= to + step / 2; x += step)
        path.push_back(trochoid(x, r.y, r.wavelength, r.steepness, r.phase));
    return path;
}

void fill_below(Pen& pen, const Box& box, Path crest, Colour colour) {
    crest.push_back({box.right() + 40, box.bottom() + 40});
    crest.push_back({box.x - 40, box.bottom() + 40});
    pen.poly(crest, true).fill(colour);
}

void echo(Pen& pen, const Box& box, const Row& row, const Sea& sea, double gap) {
    const double first = -row.phase / (2 * kPi) * row.wavelength;
    const double begin = first + std::floor((box.x - first) / row.wavelength - 2) * row.wavelength;
    for (double crest = begin; crest < box.right() + row.wavelength; crest += row.wavelength)
        for (int j = 1; j <= sea.echoes; ++j) {
            Row lower = row;
            lower.y += gap * j;
            lower.steepness *= 1 - 0.06 * j;
            const double from = crest + row.wavelength * 0.04 * j;
            const double to = crest + row.wavelength * (0.86 - 0.13 * j);
            if (to > from) pen.smooth(trace(lower, from, to), false).stroke(sea.line, sea.points * 0.6);
        }
}

}  // namespace

void draw_sea(Pen& pen, const Box& box, const Sea& sea) {
    const Hold hold(pen);
    Chance chance(sea.seed);
    // Rows stand closer towards the horizon.
    for (int i = 0; i < sea.rows; ++i) {
        const double depth = (i + 0.6) / sea.rows;
        const double scale = 0.35 + 0.65 * depth;
        const Row row{box.y + box.h * std::pow(depth, 1.35), sea.wavelength * scale,
                      sea.steepness * (0.8 + 0.2 * chance.next()), chance.between(0, 2 * kPi)};
        const Path crest = trace(row, box.x - 30, box.right() + 30);
        fill_below(pen, box, crest, mix(sea.far, sea.near, sea.rows < 2 ? 1 : 1.0 * i / (sea.rows - 1)));
        pen.smooth(crest, false).stroke(sea.line, sea.points * (0.6 + 0.4 * depth));
        echo(pen, box, row, sea, box.h / sea.rows * 0.17 * scale + 0.25);
    }
}

void wave_rule(Pen& pen, Point c, double width, Colour colour, double points) {
    const int crests = std::max(3, static_cast<int>(width / 4.2));
    const double wavelength = width / crests;
    Path path;
    for (int i = 0; i <= crests * 16; ++i) {
        const double x = i * wavelength / 16;
        const Point p = trochoid(x, 0, wavelength, 0.8, kPi);
        path.push_back({c.x - width / 2 + p.x, c.y + p.y});
    }
    pen.smooth(path, false).stroke(colour, points);
}

}  // namespace art
