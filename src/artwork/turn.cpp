// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/turn.h"

#include <cstring>
#include <utility>

namespace qw::artwork {

Turn Turn::of(int orientation) {
    switch (orientation) {
        case 2: return {true, false, false};
        case 3: return {true, true, false};
        case 4: return {false, true, false};
        case 5: return {false, false, true};
        case 6: return {false, true, true};   // the stored left side is the top: turned clockwise
        case 7: return {true, true, true};
        case 8: return {true, false, true};
        default: return {};
    }
}

PixelBox turned(const PixelBox& box, const Turn& turn, std::uint32_t width, std::uint32_t height) {
    if (box.empty()) return {};
    PixelBox result = box;
    if (turn.mirror_x) result.left = width - box.right, result.right = width - box.left;
    if (turn.mirror_y) result.top = height - box.bottom, result.bottom = height - box.top;
    if (turn.exchange) std::swap(result.left, result.top), std::swap(result.right, result.bottom);
    return result;
}

std::vector<std::uint8_t> turned(const std::vector<std::uint8_t>& elements, const Turn& turn, std::uint32_t columns,
                                 std::uint32_t rows, std::size_t bytes_each) {
    if (!turn.mirror_x && !turn.mirror_y && !turn.exchange) return elements;
    std::vector<std::uint8_t> result(std::size_t{columns} * rows * bytes_each);
    for (std::uint32_t y = 0; y < rows; ++y) {
        const std::size_t to_y = turn.mirror_y ? rows - 1 - y : y;
        for (std::uint32_t x = 0; x < columns; ++x) {
            const std::size_t to_x = turn.mirror_x ? columns - 1 - x : x;
            const std::size_t to = turn.exchange ? to_x * rows + to_y : to_y * columns + to_x;
            std::memcpy(&result[to * bytes_each], &elements[(std::size_t{y} * columns + x) * bytes_each], bytes_each);
        }
    }
    return result;
}

}  // namespace qw::artwork
