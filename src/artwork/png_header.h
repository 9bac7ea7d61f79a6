// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"

#include <cstdint>
#include <span>
#include <vector>

namespace qw::artwork {

/// What IHDR says (PNG specification, 11.2.1), checked.
struct PngHeader {
    enum Type : int { grey = 0, rgb = 2, palette = 3, grey_alpha = 4, rgb_alpha = 6 };

    std::uint32_t width = 0, height = 0;
    int bits = 8;  ///< per sample
    Type type = rgb;
    bool interlaced = false;

    int samples() const;                          ///< per pixel
    bool alpha() const { return type == grey_alpha || type == rgb_alpha; }
    int step() const;                             ///< whole bytes from a pixel to the next, at least 1
    std::uint64_t row_bytes(std::uint32_t pixels) const;  ///< without the filter byte
};

/// One of the seven passes of an interlaced picture (Adam7; PNG specification, 8.2), or the one of a plain picture.
struct PngPass {
    std::uint32_t first_x = 0, first_y = 0, step_x = 1, step_y = 1;
    std::uint32_t width = 0, height = 0;  ///< never 0
};

/// Throws Damage.
PngHeader read_header(std::span<const std::byte> ihdr);
/// The passes that hold pixels, in the order of the file.
std::vector<PngPass> passes_of(const PngHeader& header);
/// Bytes of all passes with their filter bytes: what the compressed data must unpack to.
std::uint64_t unpacked_bytes(const PngHeader& header);
/// Refuses what is larger than the limits, or larger than the file can hold, before any memory is taken for it.
void check_size(const PngHeader& header, const Limits& limits, std::uint64_t file_bytes);

}  // namespace qw::artwork
