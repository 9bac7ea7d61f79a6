// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/ink_map.h"

#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace qw::artwork {

enum class Kind { png, jpeg };
enum class Colour { grey, rgb, palette, cmyk };

/// Pixels per inch as the file declares them (PNG pHYs, JFIF or EXIF density).
struct Density {
    double x = 0, y = 0;
};

/// A run of bytes of the file.
struct Extent {
    std::uint64_t offset = 0, length = 0;
};

/// Runs of bytes in the order of the file. Copies share one list until one of them changes: a PNG of nine megabytes has a
/// thousand runs, and every edition's plan holds its facts.
class Extents {
public:
    Extents() = default;
    Extents(std::initializer_list<Extent> extents) : list_(std::make_shared<std::vector<Extent>>(extents)) {}

    bool empty() const { return size() == 0; }
    std::size_t size() const { return list_ ? list_->size() : 0; }
    const Extent& operator[](std::size_t i) const { return (*list_)[i]; }
    const Extent* begin() const { return list_ ? list_->data() : nullptr; }
    const Extent* end() const { return begin() + size(); }
    void clear() { list_.reset(); }
    void push_back(Extent extent) {
        if (!list_ || list_.use_count() > 1) list_ = std::make_shared<std::vector<Extent>>(begin(), end());
        list_->push_back(extent);
    }

private:
    std::shared_ptr<std::vector<Extent>> list_;
};

/// What artwork may be, so that a hostile or mistaken file cannot take the machine down.
struct Limits {
    std::uint64_t bytes = std::uint64_t{512} << 20;
    std::uint64_t pixels = 200'000'000;
};

/// How the samples get into a PDF.
enum class Passage {
    through,  ///< byte for byte: PNG data with predictor 15 (ISO 32000-1 7.4.4.4), a whole JPEG file (7.4.8)
    recoded   ///< decoded, flattened on white, converted to sRGB where needed, packed again without loss
};

/// What one PNG or JPEG file is. Made by one reading of the file: hashed, parsed and decoded at once.
struct Facts {
    Kind kind = Kind::png;
    std::uint64_t bytes = 0;
    std::string sha256;               ///< of the whole file
    std::string damage;               ///< not empty: the file cannot be used, and why; only bytes and sha256 hold then

    std::uint32_t width = 0, height = 0;  ///< stored pixels, before the EXIF turn
    int turn = 1;                     ///< EXIF orientation 1…8 (CIPA DC-008 Orientation tag); 1 for PNG
    Colour colour = Colour::rgb;
    int bits = 8;                     ///< per sample
    bool alpha = false;               ///< an alpha channel or a tRNS chunk
    bool interlaced = false;          ///< PNG Adam7; progressive JPEG is not meant
    std::optional<Density> density;
    bool profile = false, profile_is_srgb = false;
    std::string converted_from;       ///< the profile that its colours are converted from; empty: they are not
    double farthest_move = 0;         ///< of that profile's colours, at most (CIEDE2000), where sRGB does not have them

    Passage passage = Passage::through;
    std::string why_recoded;          ///< "it has an alpha channel", "it is interlaced" …; empty when passed through
    Extents payload;                  ///< the file's bytes that become the stream of the PDF; empty when recoded
    std::string payload_sha256;       ///< of those bytes; empty when recoded
    std::vector<std::byte> palette;   ///< RGB triples; empty unless Colour::palette

    std::string pixels;               ///< checksum of the decoded samples as they were measured (sample_digest.h)
    int jpeg_quality = 0;             ///< 1 … 100 (jpeg_quality.h); 0: no JPEG, or not to be told

    Ink ink;                          ///< of the upright picture (after the EXIF turn), on white paper

    std::uint32_t upright_width() const { return turn >= 5 ? height : width; }
    std::uint32_t upright_height() const { return turn >= 5 ? width : height; }
};

/// Reads, hashes, parses and decodes a file once. A damaged or unsuitable file is told in `damage`; throws Fault only
/// when the disk fails. Memory: a few rows of the picture (interlaced or progressive: the whole of it), never the file.
/// Thread-safe for different files; working memory is kept per thread and used again.
Facts look(Disk& disk, const Path& path, const Limits& limits = {});

}  // namespace qw::artwork
