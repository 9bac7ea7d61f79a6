// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"

#include <memory>

namespace qw::artwork {

/// Bytes that come one after the other.
class ByteStream {
public:
    virtual ~ByteStream() = default;
    /// Up to bytes.size() bytes, 0 at the end. Throws Fault when the disk fails or the file changed.
    virtual std::size_t read(std::span<std::byte> bytes) = 0;
};

/// A picture as an image XObject wants it (ISO 32000-1 8.9.5).
struct Picture {
    enum class Filter { flate_png_rows, dct };  ///< FlateDecode with predictor 15; DCTDecode
    std::uint32_t width = 0, height = 0;        ///< stored pixels
    int components = 3;                         ///< 1 grey or palette index, 3 RGB, 4 CMYK
    int bits = 8;
    Filter filter = Filter::flate_png_rows;
    std::vector<std::byte> palette;             ///< RGB triples, empty: none
    bool inverted_cmyk = false;                 ///< Adobe CMYK JPEG: the PDF needs Decode [1 0 1 0 1 0 1 0]
    std::uint64_t stream_bytes = 0;             ///< length of `samples`
    std::unique_ptr<ByteStream> samples;
};

/// Opens a file for drawing: passed through by its extents, or recoded (in memory, one picture at a time).
/// `facts` must come from `look` on the same, undamaged file; a file that changed since is a Fault.
/// A recoded picture is stored upright (turn 1), a passed one as the file has it.
Picture open_picture(Disk& disk, const Path& path, const Facts& facts);

/// Profile bytes of sRGB (IEC 61966-2-1) as lcms2 makes it, with a fixed date so that the bytes never change.
const std::vector<std::byte>& srgb_profile();

}  // namespace qw::artwork
