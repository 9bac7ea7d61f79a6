// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/colour.h"
#include "artwork/png_header.h"
#include "artwork/rows.h"
#include "artwork/scratch.h"

#include <optional>
#include <utility>

namespace qw::artwork {

/// What else a PNG says about its pixels.
struct PngPaint {
    std::vector<std::byte> palette;       ///< PLTE, RGB triples
    std::vector<std::byte> transparency;  ///< tRNS as in the file; empty: none
    std::optional<Profile> convert;       ///< set when the colours are not sRGB
};

/// Turns unfiltered PNG pixels into what Rows takes: samples of 8 bits, colours converted to sRGB, transparency laid
/// on white. A palette is converted and flattened as such and its indices are kept. Throws Damage for an index that
/// has no entry.
class PngFinish {
public:
    PngFinish(const PngHeader& header, const PngPaint& paint);

    /// Components and palette of the rows.
    const Form& form() const { return form_; }
    /// `pixels` of them, at most the width; the result is `row` itself or valid until the next call.
    const std::uint8_t* finish(const std::uint8_t* row, std::uint32_t pixels);

private:
    /// Two buffers: one holds the samples as they are now, the other takes the next form of them.
    template <typename Sample>
    struct Relay {
        const Sample* now;
        Sample *spare, *next_spare;
        void pass_on() {
            now = spare;
            std::swap(spare, next_spare);
        }
    };
    void expand(Relay<std::uint8_t>& relay, std::uint32_t pixels) const;
    void expand(Relay<std::uint16_t>& relay, std::uint32_t pixels) const;
    void make_palette(const PngPaint& paint);
    void read_key(const PngPaint& paint);
    const std::uint8_t* indices(const std::uint8_t* row, std::uint32_t pixels);
    template <typename Sample>
    const std::uint8_t* finish_as(const std::uint8_t* samples, std::uint32_t pixels);

    PngHeader header_;
    Form form_;
    bool as_it_is_ = false;
    std::size_t entries_ = 0;                 ///< of the palette
    bool keyed_ = false;                      ///< one colour is transparent
    std::uint16_t key_[3] = {0, 0, 0};
    std::optional<Conversion> conversion_;
    Scratch first_, second_, result_;
};

}  // namespace qw::artwork
