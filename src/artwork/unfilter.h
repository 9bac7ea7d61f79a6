// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>

namespace qw::artwork {

/// Undoes a PNG filter (PNG specification, clause 9) for one row.
/// `filtered` is the row without its filter byte, `above` the finished row above (zeros for the first of a pass),
/// `row` the result; all three have row_slack bytes beyond `bytes`, and `row` may not overlap the others.
/// `step` is the number of bytes of a whole pixel, at least 1. False when `type` is no filter of the specification.
bool unfilter(std::uint8_t type, const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row,
              std::size_t bytes, int step);

}  // namespace qw::artwork
