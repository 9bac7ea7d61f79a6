// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/unicode.h"

#include "base/words.h"

#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace qw::bundle {

namespace {

/// `name` as utf8proc maps it; as it is where there is no such mapping.
std::string mapped(const std::string& name, int options) {
    utf8proc_uint8_t* bytes = nullptr;
    const utf8proc_ssize_t size = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(name.data()), static_cast<utf8proc_ssize_t>(name.size()), &bytes,
                                               static_cast<utf8proc_option_t>(options | UTF8PROC_STABLE));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owned(bytes, std::free);
    return size < 0 || !bytes ? name : std::string(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
}

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }

}  // namespace

bool is_composed(const std::string& name) { return !bad_utf8_at(name) && mapped(name, UTF8PROC_COMPOSE) == name; }

std::string folded(const std::string& name) {
    if (bad_utf8_at(name)) return in_lower_case(name);
    return mapped(mapped(name, UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD), UTF8PROC_COMPOSE);
}

std::size_t length_in_utf16(const std::string& name) {
    if (bad_utf8_at(name)) return name.size();
    // Characters beyond U+FFFF begin with a byte from F0 on, and take two units.
    return characters_in(name, name.size()) +
           static_cast<std::size_t>(std::count_if(name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) >= 0xf0; }));
}

std::string shown_name(const std::string& name) {
    const bool readable = !bad_utf8_at(name);
    std::string shown;
    for (const char c : name) {
        if (!is_control(c) && (readable || static_cast<unsigned char>(c) < 0x80)) {
            shown += c;
            continue;
        }
        constexpr const char* digits = "0123456789abcdef";
        const auto byte = static_cast<unsigned char>(c);
        shown += {'\\', 'x', digits[byte >> 4], digits[byte & 15]};
    }
    return shown;
}

}  // namespace qw::bundle
