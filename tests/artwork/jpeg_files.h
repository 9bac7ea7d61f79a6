// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/judge.h"

#include <functional>
#include <optional>
#include <string>

struct jpeg_compress_struct;

namespace qw::artwork::test {

/// A JPEG that libjpeg is to write from RGB pixels.
struct JpegWish {
    enum class Colour { grey, ycc, rgb, cmyk, ycck };
    Colour colour = Colour::ycc;
    int quality = 90;
    int across = 2, down = 2;          ///< luma samples for a chroma sample
    bool progressive = false, arithmetic = false, adobe_marker = true;
    int restart_rows = 0;
    bool inverted = true;              ///< CMYK: 0 for full ink
    std::uint8_t black = 0;            ///< CMYK: that much black over everything
    Bytes exif;                        ///< a TIFF structure
    Bytes icc;
    std::function<void(jpeg_compress_struct&)> more;  ///< before the first scanline
};

Bytes write_jpeg(const JpegWish& wish, const Pixels& pixels);
/// Shapes on white, `margin` pixels from the edges.
Pixels drawing(std::uint32_t width, std::uint32_t height, std::uint32_t margin);

/// What libjpeg makes of a file: RGB, or for grey files grey three times. Nothing when it refuses or warns, or when
/// the file is CMYK.
std::optional<Pixels> decode_jpeg(const Bytes& file);
/// A CMYK or YCCK file as libjpeg decodes it, four samples a pixel, 255 for full ink: libjpeg hands out what the file has,
/// and files with an Adobe marker have 0 for full ink.
std::optional<std::vector<std::uint8_t>> decode_cmyk(const Bytes& file);
/// Only the luma, three times.
std::optional<Pixels> decode_luma(const Bytes& file);

/// Puts a segment (marker 0xFF `marker`) behind the start of the file.
Bytes with_segment(const Bytes& file, std::uint8_t marker, const Bytes& body);

/// A TIFF structure with Orientation, XResolution, YResolution and ResolutionUnit.
Bytes tiff(bool little_endian, int orientation, std::uint32_t x = 300, std::uint32_t y = 300, int unit = 2);

}  // namespace qw::artwork::test
