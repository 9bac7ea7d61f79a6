// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>

namespace qw::artwork {

/// 255 − luma of pixels, luma as InkMap (base/ink_map.h) defines it, exactly. `to` may be written up to row_slack
/// bytes beyond, and the sources read so far.
void darkness_of_rgb(const std::uint8_t* rgb, std::uint8_t* to, std::size_t pixels);
void darkness_of_grey(const std::uint8_t* grey, std::uint8_t* to, std::size_t pixels);
std::uint8_t darkness_of(std::uint8_t red, std::uint8_t green, std::uint8_t blue);

}  // namespace qw::artwork
