// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace qw::artwork {

/// A small JPEG (quality 82) of RGB pixels, at most `longest` pixels on its longer side, each the mean of the pixels that
/// it covers. Never enlarges. The same pixels give the same bytes.
std::vector<std::byte> thumbnail(std::span<const std::uint8_t> rgb, std::uint32_t width, std::uint32_t height, std::uint32_t longest);

}  // namespace qw::artwork
