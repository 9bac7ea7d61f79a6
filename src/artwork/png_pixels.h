// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/inflate.h"
#include "artwork/png_finish.h"
#include "artwork/png_header.h"
#include "artwork/rows.h"

namespace qw::artwork {

/// Decodes the data of a PNG as they come: unpacks, undoes the filters, puts the passes of an interlaced picture
/// together, finishes the samples and hands the rows on. Throws Damage.
/// Memory: a window and a few rows; for an interlaced picture all of its finished pixels.
class PngPixels {
public:
    /// `finish` and `rows` must live on.
    PngPixels(const PngHeader& header, PngFinish& finish, Rows& rows);

    /// The next bytes of the IDAT chunks, in any portions.
    void add(std::span<const std::byte> packed);
    /// There are no more: checks that nothing is missing.
    void end();

private:
    std::size_t take_rows(std::size_t held);
    void take_row(const std::uint8_t* filtered);
    void scatter(const std::uint8_t* samples);
    void begin_pass();
    bool complete() const { return pass_ == passes_.size(); }

    PngHeader header_;
    PngFinish& finish_;
    Rows& rows_;
    std::vector<PngPass> passes_;
    std::size_t pass_ = 0;
    std::uint32_t row_ = 0;       ///< within the pass
    std::size_t row_bytes_ = 0;   ///< of the pass
    Inflate inflate_;
    Scratch window_, above_, current_;
    std::size_t held_ = 0;        ///< unpacked bytes in the window
    std::vector<std::uint8_t> whole_;  ///< of an interlaced picture
};

}  // namespace qw::artwork
