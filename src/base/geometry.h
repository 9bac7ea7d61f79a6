// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"

namespace qw {

/// Plane geometry of a sheet. The origin is the sheet's lower left corner, x to the right, y upward, as in PDF user
/// space (ISO 32000-1 8.3.2.3), so that nothing has to be turned over between composing and drawing.
struct Point {
    Length x, y;
    friend constexpr bool operator==(const Point&, const Point&) = default;
};

struct Size {
    Length width, height;
    constexpr Size turned() const { return {height, width}; }
    constexpr bool landscape() const { return width > height; }
    constexpr Size as_landscape() const { return landscape() ? *this : turned(); }
    constexpr Size as_portrait() const { return landscape() ? turned() : *this; }
    friend constexpr Size operator*(Size size, double factor) { return {size.width * factor, size.height * factor}; }
    friend constexpr bool operator==(const Size&, const Size&) = default;
};

/// Axis-parallel rectangle, left ≤ right and bottom ≤ top.
struct Rect {
    Length left, bottom, right, top;

    static constexpr Rect of(Size size) { return {{}, {}, size.width, size.height}; }
    static constexpr Rect at(Point corner, Size size) {
        return {corner.x, corner.y, corner.x + size.width, corner.y + size.height};
    }
    /// `size` centred in `outer`.
    static constexpr Rect centred(Size size, const Rect& outer) {
        const Point corner{outer.left + (outer.width() - size.width) / 2, outer.bottom + (outer.height() - size.height) / 2};
        return at(corner, size);
    }

    constexpr Length width() const { return right - left; }
    constexpr Length height() const { return top - bottom; }
    constexpr Size size() const { return {width(), height()}; }
    constexpr Point centre() const { return {(left + right) / 2, (bottom + top) / 2}; }
    constexpr bool empty() const { return !(left < right && bottom < top); }
    constexpr Rect inset(Length by) const { return inset(by, by); }
    constexpr Rect inset(Length x, Length y) const { return {left + x, bottom + y, right - x, top - y}; }
    constexpr Rect moved(Length dx, Length dy) const { return {left + dx, bottom + dy, right + dx, top + dy}; }
    constexpr Rect shared_with(const Rect& o) const {
        return {max(left, o.left), max(bottom, o.bottom), min(right, o.right), min(top, o.top)};
    }
    /// True if `inner` lies inside, at most `slack` outside on any side.
    constexpr bool holds(const Rect& inner, Length slack = {}) const {
        return inner.left >= left - slack && inner.bottom >= bottom - slack && inner.right <= right + slack &&
               inner.top <= top + slack;
    }
    friend constexpr bool operator==(const Rect&, const Rect&) = default;
};

/// Affine map (x, y) → (a·x + c·y + e, b·x + d·y + f), the order of PDF's `cm` (ISO 32000-1 8.3.3).
/// a…d have no unit when a length is mapped; for pictures, which are drawn in a unit square, they are lengths in
/// points. e and f are in points.
struct Matrix {
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

    /// `first`, then `*this`.
    constexpr Matrix after(const Matrix& first) const {
        return {first.a * a + first.b * c,     first.a * b + first.b * d,     first.c * a + first.d * c,
                first.c * b + first.d * d,     first.e * a + first.f * c + e, first.e * b + first.f * d + f};
    }
    friend constexpr bool operator==(const Matrix&, const Matrix&) = default;
};

}  // namespace qw
