// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace qw::artwork {

/// Numbers out of a file's bytes. The caller has made sure that they are there.
inline std::uint8_t byte_at(std::span<const std::byte> bytes, std::size_t at) {
    return std::to_integer<std::uint8_t>(bytes[at]);
}
inline std::uint16_t big16(std::span<const std::byte> bytes, std::size_t at) {
    return static_cast<std::uint16_t>(byte_at(bytes, at) << 8 | byte_at(bytes, at + 1));
}
inline std::uint32_t big32(std::span<const std::byte> bytes, std::size_t at) {
    return std::uint32_t{big16(bytes, at)} << 16 | big16(bytes, at + 2);
}

}  // namespace qw::artwork
