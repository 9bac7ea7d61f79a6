// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"

#include <algorithm>

namespace qw::proof {

/// A rectangle in points of default user space while matrices are still being multiplied; it becomes a Rect of
/// lengths once, at the end, so that nothing is rounded in between. left ≤ right and bottom ≤ top.
struct Box {
    double left = 0, bottom = 0, right = 0, top = 0;

    bool empty() const { return !(left < right && bottom < top); }
    /// An empty box where the two do not meet.
    Box shared_with(const Box& o) const {
        const Box box{std::max(left, o.left), std::max(bottom, o.bottom), std::min(right, o.right), std::min(top, o.top)};
        return {box.left, box.bottom, std::max(box.left, box.right), std::max(box.bottom, box.top)};
    }
    Box with(double x, double y) const {
        return {std::min(left, x), std::min(bottom, y), std::max(right, x), std::max(top, y)};
    }
    /// Coordinates beyond ±1e9 pt are brought back to it: no page reaches there, and a Length must hold them.
    Rect rect() const;
};

struct Spot {
    double x = 0, y = 0;
};
inline Spot mapped(const Matrix& m, Spot p) { return {m.a * p.x + m.c * p.y + m.e, m.b * p.x + m.d * p.y + m.f}; }

/// The smallest box around the mapped one; the mapped one itself where the matrix turns by multiples of 90°.
Box around(const Matrix& matrix, const Box& box);

bool is_finite(const Matrix& matrix);

}  // namespace qw::proof
