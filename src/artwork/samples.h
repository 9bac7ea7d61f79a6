// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>

namespace qw::artwork {

/// Sample arithmetic on rows. `colours` is the number of samples of a pixel without alpha; results have 8 bits.

/// One sample of 1, 2 or 4 bits to a byte each, first sample in the high bits (PNG specification, 7.2).
void unpack_bits(const std::uint8_t* packed, std::uint8_t* to, std::size_t samples, int bits);
/// Big-endian 16 bits to the machine's own order.
void swap_from_file(const std::uint8_t* from, std::uint16_t* to, std::size_t samples);
/// The nearest of 255 levels to v / 257.
void narrow(const std::uint16_t* from, std::uint8_t* to, std::size_t samples);
/// Adds an alpha sample: 0 where the pixel equals `key`, else full.
template <typename Sample>
void add_key_alpha(const Sample* from, Sample* to, std::size_t pixels, int colours, const std::uint16_t* key);
/// Lays pixels with alpha on white, rounded to nearest, and drops the alpha.
void lay_on_white(const std::uint8_t* from, std::uint8_t* to, std::size_t pixels, int colours);
void lay_on_white(const std::uint16_t* from, std::uint8_t* to, std::size_t pixels, int colours);
/// One sample on white.
std::uint8_t on_white(std::uint8_t sample, std::uint8_t alpha);

}  // namespace qw::artwork
