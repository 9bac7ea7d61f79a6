// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/judge.h"

#include "base/digest.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

namespace qw::artwork::test {

Pixels on_paper(const Decoded& decoded) {
    Pixels pixels{decoded.width, decoded.height, {}};
    for (std::size_t i = 0; i < decoded.rgba.size(); i += 4) {
        const double alpha = decoded.rgba[i + 3] / 65535.0;
        for (std::size_t c = 0; c < 3; ++c) {
            const double laid = std::round(decoded.rgba[i + c] * alpha + 65535 * (1 - alpha));
            pixels.rgb.push_back(static_cast<std::uint8_t>(std::lround(laid / 257)));
        }
    }
    return pixels;
}

Pixels upright(const Pixels& stored, int orientation) {
    const std::uint32_t w = stored.width, h = stored.height;
    Pixels result{orientation >= 5 ? h : w, orientation >= 5 ? w : h, {}};
    result.rgb.resize(stored.rgb.size());
    for (std::uint32_t y = 0; y < h; ++y) {
        for (std::uint32_t x = 0; x < w; ++x) {
            // Which side of the upright picture the stored row 0 and column 0 are.
            std::uint32_t to_x = x, to_y = y;
            switch (orientation) {
                case 2: to_x = w - 1 - x; break;                    // top, right
                case 3: to_x = w - 1 - x, to_y = h - 1 - y; break;  // bottom, right
                case 4: to_y = h - 1 - y; break;                    // bottom, left
                case 5: to_x = y, to_y = x; break;                  // left, top
                case 6: to_x = h - 1 - y, to_y = x; break;          // right, top
                case 7: to_x = h - 1 - y, to_y = w - 1 - x; break;  // right, bottom
                case 8: to_x = y, to_y = w - 1 - x; break;          // left, bottom
                default: break;
            }
            for (std::size_t c = 0; c < 3; ++c)
                result.rgb[(std::size_t{to_y} * result.width + to_x) * 3 + c] = stored.rgb[(std::size_t{y} * w + x) * 3 + c];
        }
    }
    return result;
}

Ink plain_ink(const Pixels& pixels, std::uint32_t cell) {
    Ink ink;
    ink.map.cell = cell;
    ink.map.columns = (pixels.width + cell - 1) / cell;
    ink.map.rows = (pixels.height + cell - 1) / cell;
    const std::size_t cells = std::size_t{ink.map.columns} * ink.map.rows;
    ink.map.darkest.assign(cells, 0);
    std::vector<double> sums(cells, 0), counts(cells, 0);
    PixelBox box{pixels.width, pixels.height, 0, 0};
    double total = 0;
    for (std::uint32_t y = 0; y < pixels.height; ++y) {
        for (std::uint32_t x = 0; x < pixels.width; ++x) {
            const std::uint8_t* p = &pixels.rgb[(std::size_t{y} * pixels.width + x) * 3];
            const int dark = 255 - (299 * p[0] + 587 * p[1] + 114 * p[2] + 500) / 1000;
            const std::size_t at = ink.map.at(x / cell, y / cell);
            ink.map.darkest[at] = static_cast<std::uint8_t>(std::max<int>(ink.map.darkest[at], dark));
            sums[at] += dark;
            counts[at] += 1;
            total += dark;
            if (dark < ink_threshold) continue;
            box = {std::min(box.left, x), std::min(box.top, y), std::max(box.right, x + 1), std::max(box.bottom, y + 1)};
        }
    }
    for (std::size_t i = 0; i < cells; ++i) ink.map.mean.push_back(static_cast<std::uint8_t>(std::floor(sums[i] / counts[i] + 0.5)));
    ink.box = box.empty() ? PixelBox{} : box;
    ink.coverage = total / 255 / pixels.width / pixels.height;
    return ink;
}

void require_same(const Ink& a, const Ink& b) {
    CHECK(a.box.left == b.box.left);
    CHECK(a.box.top == b.box.top);
    CHECK(a.box.right == b.box.right);
    CHECK(a.box.bottom == b.box.bottom);
    CHECK(a.coverage == Approx(b.coverage).margin(1e-9));
    CHECK(a.map.cell == b.map.cell);
    CHECK(a.map.columns == b.map.columns);
    CHECK(a.map.rows == b.map.rows);
    CHECK(a.map.darkest == b.map.darkest);
    CHECK(a.map.mean == b.map.mean);
}

Facts look_at(const Bytes& file, const Limits& limits) {
    HeldDisk disk(file);
    return look(disk, "picture", limits);
}

std::string sha256_of(const Bytes& bytes) {
    Sha256 digest;
    digest.add(bytes);
    return digest.hex();
}

}  // namespace qw::artwork::test
