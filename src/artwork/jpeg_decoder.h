// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/reader.h"

#include <memory>
#include <optional>

namespace qw::artwork {

/// What the head of a JPEG file says.
struct JpegHead {
    enum class Coded { grey, ycc, rgb, cmyk, other };
    std::uint32_t width = 0, height = 0;
    int components = 0;
    Coded coded = Coded::other;          ///< as libjpeg takes it; YCCK counts as CMYK
    std::optional<int> adobe_transform;  ///< of the Adobe marker, when there is one
    bool arithmetic = false;
    int quality = 0;                     ///< jpeg_quality.h; 0: not to be told
    double ppi_x = 0, ppi_y = 0;         ///< of the JFIF marker; 0: not said
};

/// libjpeg-turbo, fed by a Reader. All functions throw Damage for what is wrong with the file (a warning of the
/// library counts as that, and stops at once) and pass on what the Reader throws.
class JpegDecoder {
public:
    explicit JpegDecoder(Reader& reader);
    ~JpegDecoder();
    JpegDecoder(const JpegDecoder&) = delete;
    JpegDecoder& operator=(const JpegDecoder&) = delete;

    JpegHead read_head();
    /// After read_head. Bytes behind "Exif\0\0"; valid as long as the decoder.
    std::span<const std::byte> exif() const;
    /// After read_head. Put together from all APP2 segments; empty: none.
    std::vector<std::byte> icc();

    enum class Output { luma, rgb, cmyk };
    void start(Output output);
    /// The next few rows, one after the other; each has components × width bytes, the last is followed by row_slack.
    /// None after the last. Valid until the next call.
    struct Batch {
        const std::uint8_t* samples = nullptr;
        std::uint32_t rows = 0;
    };
    Batch next();
    /// Reads up to the end mark (EOI).
    void finish();

    struct Link;

private:
    std::unique_ptr<Link> link_;
    std::optional<Scratch> batch_;
};

}  // namespace qw::artwork
