// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <span>

namespace qw::artwork {

/// How hard a JPEG was packed, 1 … 100 as encoders have it: the step at which the luminance table of ITU-T T.81 annex K
/// (table K.1), scaled as the Independent JPEG Group's library scales it, is nearest to the file's own. Programs with
/// tables of their own get the step that loses about as much. `table`: the quantisation table of the first component, row
/// by row. 0 for one that has zeros, which no picture can have.
int jpeg_quality(std::span<const std::uint16_t, 64> table);

}  // namespace qw::artwork
