// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/rows.h"
#include "artwork/scratch.h"
#include "artwork/turn.h"
#include "base/ink_map.h"

#include <optional>

namespace qw::artwork {

/// The pixels along the side of an ink map's cell: the smallest power of two that gives at most 225 cells along the
/// longer side, 8 for a sheet at 300 ppi.
std::uint32_t cell_for(std::uint32_t width, std::uint32_t height);

/// Measures the ink of a picture as its rows come. Everything is exact, to the pixel and the level.
class InkRows : public Rows {
public:
    void begin(const Form& form) override;
    void row(const std::uint8_t* samples) override;
    /// After the last row: of the upright picture.
    Ink ink() const;

private:
    void darken(const std::uint8_t* samples);
    void end_band();
    void end_cells();
    void widen_box();

    Form form_;
    Turn turn_;
    // Cells are counted from the upright picture's corner; where it is mirrored the stored picture's first cell is the
    // short one.
    std::uint32_t cell_ = 1, shift_x_ = 0, shift_y_ = 0;
    std::uint8_t darkness_[256] = {};  ///< of the palette's colours
    InkMap map_;
    PixelBox box_;
    std::uint64_t total_ = 0;

    std::uint32_t y_ = 0;
    std::uint32_t band_rows_ = 0, cell_rows_ = 0;
    std::optional<Scratch> dark_, darkest_, sums_;  ///< one row; of each column in the rows of a band
    std::vector<std::uint64_t> cell_sums_;
};

}  // namespace qw::artwork
