// SPDX-License-Identifier: GPL-3.0-or-later
#include "type/characters.h"

namespace qw::type {

namespace {

constexpr std::uint32_t replacement = 0xFFFD;

std::uint32_t byte_at(std::string_view text, std::size_t at) { return static_cast<unsigned char>(text[at]); }

int bytes_led_by(std::uint32_t lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead < 0xE0) return 2;
    if (lead >= 0xE0 && lead < 0xF0) return 3;
    if (lead >= 0xF0 && lead < 0xF5) return 4;
    return 0;
}

bool lawful(std::uint32_t character, int bytes) {
    static constexpr std::uint32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
    return character >= least[bytes] && character <= 0x10FFFF && !(character >= 0xD800 && character < 0xE000);
}

/// The character at `at` and how many bytes it takes; the replacement and one byte when there is none.
std::pair<std::uint32_t, int> next(std::string_view text, std::size_t at) {
    const std::uint32_t lead = byte_at(text, at);
    const int bytes = bytes_led_by(lead);
    if (bytes == 1) return {lead, 1};
    if (bytes == 0 || at + static_cast<std::size_t>(bytes) > text.size()) return {replacement, 1};
    std::uint32_t character = lead & (0xFFu >> (bytes + 1));
    for (int i = 1; i < bytes; ++i) {
        const std::uint32_t follower = byte_at(text, at + static_cast<std::size_t>(i));
        if ((follower & 0xC0) != 0x80) return {replacement, 1};
        character = character << 6 | (follower & 0x3F);
    }
    return lawful(character, bytes) ? std::pair(character, bytes) : std::pair(replacement, 1);
}

}  // namespace

std::vector<std::uint32_t> characters_of(std::string_view utf8) {
    std::vector<std::uint32_t> characters;
    characters.reserve(utf8.size());
    for (std::size_t at = 0; at < utf8.size();) {
        const auto [character, bytes] = next(utf8, at);
        characters.push_back(character);
        at += static_cast<std::size_t>(bytes);
    }
    return characters;
}

std::string utf8_of(std::uint32_t c) {
    const auto follower = [](std::uint32_t bits) { return static_cast<char>(0x80 | (bits & 0x3F)); };
    if (c < 0x80) return {static_cast<char>(c)};
    if (c < 0x800) return {static_cast<char>(0xC0 | c >> 6), follower(c)};
    if (c < 0x10000) return {static_cast<char>(0xE0 | c >> 12), follower(c >> 6), follower(c)};
    return {static_cast<char>(0xF0 | c >> 18), follower(c >> 12), follower(c >> 6), follower(c)};
}

}  // namespace qw::type
