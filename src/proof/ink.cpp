// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/render.h"

#include <algorithm>

namespace qw::proof {

namespace {

void darken(const std::uint8_t* rgb, std::vector<std::uint8_t>& row) {
    for (std::size_t x = 0; x < row.size(); ++x, rgb += 3)
        row[x] = static_cast<std::uint8_t>(255 - (299u * rgb[0] + 587u * rgb[1] + 114u * rgb[2] + 500u) / 1000u);
}

/// Gathers rows of darkness into cells.
class Cells {
public:
    explicit Cells(InkMap& map) : map_(map), darkest_(map.columns), sums_(map.columns) {}

    std::uint32_t add(const std::vector<std::uint8_t>& row) {
        std::uint32_t total = 0;
        for (std::size_t column = 0, x = 0; column < map_.columns; ++column) {
            const std::size_t end = std::min(x + map_.cell, row.size());
            std::uint32_t sum = 0;
            std::uint8_t darkest = 0;
            for (; x < end; ++x) {
                sum += row[x];
                darkest = std::max(darkest, row[x]);
            }
            sums_[column] += sum;
            darkest_[column] = std::max(darkest_[column], darkest);
            total += sum;
        }
        ++height_;
        return total;
    }

    /// Ends a row of cells; `width` is the picture's in pixels.
    void end_row(std::size_t width) {
        for (std::size_t column = 0; column < map_.columns; ++column) {
            const std::size_t wide = std::min<std::size_t>(map_.cell, width - column * map_.cell);
            const std::uint64_t pixels = wide * height_;
            map_.mean.push_back(static_cast<std::uint8_t>((sums_[column] + pixels / 2) / pixels));
            map_.darkest.push_back(darkest_[column]);
        }
        std::fill(sums_.begin(), sums_.end(), 0);
        std::fill(darkest_.begin(), darkest_.end(), std::uint8_t{0});
        height_ = 0;
    }

private:
    InkMap& map_;
    std::vector<std::uint8_t> darkest_;
    std::vector<std::uint64_t> sums_;
    std::uint64_t height_ = 0;
};

void widen(PixelBox& box, const std::vector<std::uint8_t>& row, std::uint32_t y) {
    const auto inked = [](std::uint8_t darkness) { return darkness >= ink_threshold; };
    const auto first = std::find_if(row.begin(), row.end(), inked);
    if (first == row.end()) return;
    const auto last = std::find_if(row.rbegin(), row.rend(), inked);
    const auto left = static_cast<std::uint32_t>(first - row.begin());
    const auto right = static_cast<std::uint32_t>(row.rend() - last);
    box = box.empty() ? PixelBox{left, y, right, y + 1}
                      : PixelBox{std::min(box.left, left), box.top, std::max(box.right, right), y + 1};
}

}  // namespace

Ink ink_of(const Pixels& pixels, std::uint32_t cell) {
    Ink ink;
    ink.map.cell = std::max(cell, 1u);
    if (pixels.width == 0 || pixels.height == 0) return ink;
    ink.map.columns = (pixels.width - 1) / ink.map.cell + 1;
    ink.map.rows = (pixels.height - 1) / ink.map.cell + 1;
    Cells cells(ink.map);
    std::vector<std::uint8_t> row(pixels.width);
    std::uint64_t total = 0;
    for (std::uint32_t y = 0; y < pixels.height; ++y) {
        darken(pixels.rgb.data() + std::size_t{y} * pixels.width * 3, row);
        widen(ink.box, row, y);
        total += cells.add(row);
        if ((y + 1) % ink.map.cell == 0 || y + 1 == pixels.height) cells.end_row(pixels.width);
    }
    ink.coverage = static_cast<double>(total) / 255.0 / static_cast<double>(pixels.width) / static_cast<double>(pixels.height);
    return ink;
}

}  // namespace qw::proof
