// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace qw::type {

/// The characters of a UTF-8 text (RFC 3629). A byte that belongs to none becomes U+FFFD, which the sheets' fonts
/// are asked for like any other character, so that bad text shows up as missing instead of as something else.
std::vector<std::uint32_t> characters_of(std::string_view utf8);

/// One character as UTF-8.
std::string utf8_of(std::uint32_t character);

}  // namespace qw::type
