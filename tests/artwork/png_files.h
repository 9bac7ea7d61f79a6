// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/held_disk.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

struct png_struct_def;
struct png_info_def;

namespace qw::artwork::test {

/// A PNG that libpng is to write. Samples are drawn by `sample_at`, so that every kind has a known content.
struct PngWish {
    std::uint32_t width = 37, height = 23;
    int type = 2, bits = 8;
    bool interlaced = false;
    int filters = 0xF8;               ///< libpng's mask: all
    bool transparency = false;        ///< a tRNS chunk (types 0, 2, 3)
    int palette_colours = 0;          ///< type 3: 0 for all that the bits allow
    std::size_t idat_bytes = 8192;
    bool blank = false;               ///< white, opaque
    std::function<void(png_struct_def*, png_info_def*)> more;  ///< further settings before the header is written
};

Bytes write_png(const PngWish& wish);

/// What libpng makes of a file, all expanded: RGBA, 16 bits a sample whatever the file has.
struct Decoded {
    std::uint32_t width = 0, height = 0;
    int type = 0, bits = 0;  ///< of the file
    std::vector<std::uint16_t> rgba;
};
/// Nothing when libpng refuses, or warns about the pixel data.
std::optional<Decoded> decode_png(const Bytes& file);

/// A chunk with its check sum.
Bytes chunk(std::string_view name, const Bytes& body);
Bytes chunk(std::string_view name, std::string_view body);
Bytes signature();
Bytes operator+(Bytes a, const Bytes& b);
/// A zlib stream, by zlib.
Bytes packed(const Bytes& plain, int level = 6);
Bytes bytes_of(std::string_view text);
Bytes ihdr(std::uint32_t width, std::uint32_t height, int bits, int type, int interlace = 0);

/// Where the chunks lie: name and the extent of its body.
struct Found {
    std::string name;
    std::size_t at = 0, length = 0;
};
std::vector<Found> chunks_of(const Bytes& file);
/// Writes the right check sum behind the chunk.
void mend_sum(Bytes& file, const Found& chunk);

}  // namespace qw::artwork::test
