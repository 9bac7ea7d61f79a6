// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/glob.h"

namespace qw::kit {

namespace {

/// The byte after the character that begins at `at`.
std::size_t after_character(std::string_view text, std::size_t at) {
    ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xc0) == 0x80) ++at;
    return at;
}

}  // namespace

bool has_wildcards(std::string_view text) { return text.find_first_of("*?") != std::string_view::npos; }

bool glob_matches(std::string_view pattern, std::string_view name) {
    if (name.starts_with('.') && !pattern.starts_with('.')) return false;
    std::size_t p = 0, n = 0;
    std::size_t star = std::string_view::npos, resumed = 0;  // the last `*`, and where what follows it was tried
    while (n < name.size()) {
        if (p < pattern.size() && pattern[p] == '*') {
            star = p++;
            resumed = n;
        } else if (p < pattern.size() && pattern[p] == '?') {
            ++p;
            n = after_character(name, n);
        } else if (p < pattern.size() && pattern[p] == name[n]) {
            ++p;
            ++n;
        } else if (star != std::string_view::npos) {
            p = star + 1;
            n = resumed = after_character(name, resumed);
        } else {
            return false;
        }
    }
    return pattern.find_first_not_of('*', p) == std::string_view::npos;
}

}  // namespace qw::kit
