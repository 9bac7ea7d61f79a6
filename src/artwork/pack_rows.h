// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/rows.h"

#include <cstddef>
#include <vector>

namespace qw::artwork {

/// Packs rows as a zlib stream of PNG rows (predictor 15 of ISO 32000-1 7.4.4.4), upright. The same rows give the
/// same bytes. Memory: the whole picture, and once more while it is turned or packed.
class PackRows : public Rows {
public:
    void begin(const Form& form) override;
    void row(const std::uint8_t* samples) override;
    /// After the last row; once.
    std::vector<std::byte> packed();
    /// After `packed`: as it was packed, with turn 1.
    const Form& form() const { return form_; }

private:
    std::size_t row_bytes() const { return std::size_t{form_.width} * static_cast<unsigned>(form_.components); }
    void filter(const std::uint8_t* samples);
    void make_upright();

    Form form_;
    std::vector<std::uint8_t> filtered_;  ///< rows with their filter byte
    std::vector<std::uint8_t> as_stored_; ///< rows that still have to be turned
};

}  // namespace qw::artwork
