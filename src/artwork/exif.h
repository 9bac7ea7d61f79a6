// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"

#include <optional>
#include <span>

namespace qw::artwork {

/// What the first directory (IFD0) of EXIF data says about the picture (CIPA DC-008, 4.6).
struct Exif {
    int turn = 1;  ///< 1 … 8
    std::optional<Density> density;
};

/// Reads the TIFF structure that follows "Exif\0\0" in a JPEG's APP1 segment, in either byte order. What is missing,
/// out of bounds or of another type counts as not said: cameras and editors leave much that is wrong here, and the
/// picture is good without it.
Exif read_exif(std::span<const std::byte> tiff);

}  // namespace qw::artwork
