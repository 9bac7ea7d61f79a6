// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/net.h"

#include <optional>
#include <vector>

namespace qw::parts {

/// The circle through three points, and the way round it from the first by the second to the third; nothing when they
/// lie on a line, within `same_point`.
struct Circle {
    Point centre;
    bool clockwise = false;
};
std::optional<Circle> circle_through(Point from, Point through, Point to);

/// What an edge turns through, in radians: positive, less than a full turn. 0 for a straight one.
double sweep_of(Point from, const Outline::Edge& edge);

/// Appends the corners of the edge that follow `from`, `edge.to` included: one for a straight edge, the ends of the
/// chords for an arc. The chords of an arc and of the same arc the other way round have the same ends.
void add_chords(Ring& ring, Point from, const Outline::Edge& edge);

/// The outline the other way round.
Outline reversed(const Outline& outline);

}  // namespace qw::parts
