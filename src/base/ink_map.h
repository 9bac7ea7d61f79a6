// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace qw {

/// A rectangle of pixels, left and top included, right and bottom not. Rows count from the top.
struct PixelBox {
    std::uint32_t left = 0, top = 0, right = 0, bottom = 0;
    bool empty() const { return left >= right || top >= bottom; }
    friend bool operator==(const PixelBox&, const PixelBox&) = default;
};

/// How dark a picture is, coarsely: one cell covers `cell` × `cell` pixels (less at the right and lower edge).
/// Darkness is 255 minus the luma of a pixel on white paper, luma = (299 R + 587 G + 114 B + 500) / 1000 of the sRGB
/// values (weights of ITU-R BT.601). Made by whoever looks at a picture (artwork or finished page), compared by the
/// checks.
struct InkMap {
    std::uint32_t cell = 1, columns = 0, rows = 0;
    std::vector<std::uint8_t> darkest;  ///< rows × columns, the darkest pixel of the cell
    std::vector<std::uint8_t> mean;     ///< rows × columns, the mean of the cell

    std::size_t at(std::uint32_t column, std::uint32_t row) const { return std::size_t{row} * columns + column; }
};

/// What counts as ink: darkness of at least this. Lighter tints do not survive a home printer and drown in a
/// renderer's rounding.
inline constexpr std::uint8_t ink_threshold = 8;

struct Ink {
    PixelBox box;         ///< smallest box with all pixels of darkness ≥ ink_threshold; empty for a blank picture
    double coverage = 0;  ///< mean darkness of all pixels, 0 white … 1 black
    InkMap map;
};

}  // namespace qw
