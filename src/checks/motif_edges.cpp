// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/motif_edges.h"

#include <algorithm>
#include <cmath>

namespace qw::checks {

namespace {

int step(const InkMap& map, std::uint32_t column, std::uint32_t row) {
    const int here = map.mean[map.at(column, row)];
    const int right = column + 1 < map.columns ? map.mean[map.at(column + 1, row)] : here;
    const int below = row + 1 < map.rows ? map.mean[map.at(column, row + 1)] : here;
    return std::max(std::abs(right - here), std::abs(below - here));
}

}  // namespace

MotifEdges motif_edges(const Ink& ink, std::uint32_t width, std::uint32_t height, const Rect& area, double least, const std::function<bool(Point)>& asked) {
    MotifEdges edges;
    const InkMap& map = ink.map;
    for (std::uint32_t row = 0; row < map.rows; ++row)
        for (std::uint32_t column = 0; column < map.columns; ++column) {
            const double x = std::min((column + 0.5) * map.cell, static_cast<double>(width)), y = std::min((row + 0.5) * map.cell, static_cast<double>(height));
            const bool in = asked({area.left + area.width() * (x / width), area.top - area.height() * (y / height)});
            const bool edge = step(map, column, row) >= least;
            edges.asked += in;
            edges.all += edge;
            edges.inside += in && edge;
        }
    return edges;
}

}  // namespace qw::checks
