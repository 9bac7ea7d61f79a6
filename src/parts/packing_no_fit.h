// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/packing_outline.h"

#include <array>
#include <vector>

namespace qw::parts::packing {

/// All sums of a point of one and a point of the other (Minkowski), both without holes. From the convolution of their
/// outlines: it goes round each point as often as the one and the other, reflected and moved there, have pieces in
/// common (Guibas, Ramshaw and Stolfi, A kinetic framework for computational geometry, 1983; from memory).
Region sum_of(const Region& a, const Region& b);
/// How many edges that convolution has: what the sum costs.
std::size_t edges_in_sum(const Region& a, const Region& b);

/// A polygon about the origin that holds the disc (`round`), or lies in it, with its width and height in the first case.
/// One point for a radius of 0.
Ring disc_outside(Length radius);
Ring disc_inside(Length radius);

Region reflected(const Region& region);

/// For two copies of a shape in quarter turns, each with the lower left corner of its bounds at the origin: [turn of the one
/// that stays][turn of the other] where the other one may not be moved to. Only `turns` are filled.
using Pairs = std::array<std::array<Region, 4>, 4>;
Pairs pairs_of(const Region& shape, const Ring& disc, const std::vector<int>& turns);

/// Where a second shape may not be moved to, seen from a first one that stays: the inside of this area.
class NoFit {
public:
    struct Edge {
        Point a, b;
        Rect box;
        double length = 0;             ///< units
        bool straight = false;         ///< along an axis
    };

    NoFit() = default;
    explicit NoFit(const Region& area);

    /// True if `offset` lies inside. Exact where edges run along the axes; at slanted ones a depth of one unit
    /// (1/36000 mm) is none, because that is how far rounding moves a corner.
    bool blocks(Point offset) const;
    const std::vector<Edge>& edges() const { return edges_; }
    const Rect& box() const { return box_; }

private:
    std::vector<Edge> edges_;
    Rect box_;
};

}  // namespace qw::parts::packing
