// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string_view>

namespace qw::proof {

/// An operator of a content stream (ISO 32000-1 annex A; at most three letters) as a number that a switch takes.
constexpr std::uint32_t op(std::string_view letters) {
    std::uint32_t code = 0;
    if (letters.size() > 3) return 0;
    for (const char letter : letters) code = code << 8 | static_cast<unsigned char>(letter);
    return code;
}

}  // namespace qw::proof
