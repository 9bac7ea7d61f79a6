// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "artwork/held_disk.h"
#include "artwork/png_files.h"

#include <cstdint>
#include <vector>

namespace qw::artwork::test {

/// Opaque RGB pixels, 8 bits a sample.
struct Pixels {
    std::uint32_t width = 0, height = 0;
    std::vector<std::uint8_t> rgb;
};

/// Laid on white and brought to 8 bits, as one would write it down.
Pixels on_paper(const Decoded& decoded);
/// By an EXIF orientation, pixel by pixel, from the table of CIPA DC-008.
Pixels upright(const Pixels& pixels, int orientation);
/// Ink as base/ink_map.h defines it, pixel by pixel, for a given cell.
Ink plain_ink(const Pixels& pixels, std::uint32_t cell);
/// Compares every field; the coverage to 1e-9.
void require_same(const Ink& a, const Ink& b);

Facts look_at(const Bytes& file, const Limits& limits = {});
std::string sha256_of(const Bytes& bytes);

}  // namespace qw::artwork::test
