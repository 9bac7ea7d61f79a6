// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/box.h"

#include <cmath>

namespace qw::proof {

namespace {
Length bounded(double points) {
    if (std::isnan(points)) return {};
    return Length::points(std::clamp(points, -1e9, 1e9));
}
}  // namespace

Rect Box::rect() const { return {bounded(left), bounded(bottom), bounded(right), bounded(top)}; }

Box around(const Matrix& matrix, const Box& box) {
    const Spot first = mapped(matrix, {box.left, box.bottom});
    Box result{first.x, first.y, first.x, first.y};
    for (const Spot corner : {Spot{box.right, box.bottom}, Spot{box.right, box.top}, Spot{box.left, box.top}}) {
        const Spot at = mapped(matrix, corner);
        result = result.with(at.x, at.y);
    }
    return result;
}

bool is_finite(const Matrix& m) {
    for (const double value : {m.a, m.b, m.c, m.d, m.e, m.f})
        if (!std::isfinite(value)) return false;
    return true;
}

}  // namespace qw::proof
