// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace qw::artwork {

/// Bytes beyond the end of every row that may be read and, in a row being made, overwritten: whole vectors are faster
/// than exact ends.
inline constexpr std::size_t row_slack = 16;

/// What decoded rows look like: 8 bits a sample, opaque on white, colours as sRGB.
struct Form {
    std::uint32_t width = 0, height = 0;
    int components = 3;                 ///< 1 grey or palette index, 3 RGB
    int turn = 1;                       ///< EXIF orientation that is still to be applied
    std::vector<std::uint8_t> palette;  ///< RGB triples for the indices; empty: no palette
};

/// Takes a picture row by row from the top, as it is decoded.
class Rows {
public:
    virtual ~Rows() = default;
    /// Once, before the first row, when what the file holds is known to be acceptable.
    virtual void begin(const Form& form) = 0;
    /// `form.height` times; width × components bytes plus row_slack.
    virtual void row(const std::uint8_t* samples) = 0;
};

/// What the rows are wanted for.
enum class Purpose {
    measuring,  ///< ink: a JPEG's own luma will do
    drawing     ///< every colour
};

}  // namespace qw::artwork
