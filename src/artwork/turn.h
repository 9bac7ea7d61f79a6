// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/ink_map.h"

#include <cstdint>
#include <vector>

namespace qw::artwork {

/// What an EXIF orientation (CIPA DC-008, Orientation tag) does to the stored picture to make it upright: first
/// mirrored left to right and top to bottom where asked for, then rows and columns exchanged.
struct Turn {
    bool mirror_x = false, mirror_y = false, exchange = false;
    static Turn of(int orientation);
};

/// Both as stored, `width` × `height`; the result is upright.
PixelBox turned(const PixelBox& box, const Turn& turn, std::uint32_t width, std::uint32_t height);
/// `bytes_each` bytes an element, rows × columns.
std::vector<std::uint8_t> turned(const std::vector<std::uint8_t>& elements, const Turn& turn, std::uint32_t columns,
                                 std::uint32_t rows, std::size_t bytes_each);

}  // namespace qw::artwork
