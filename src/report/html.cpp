// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/html.h"

namespace qw::report {

std::string escaped(const std::string& text) {
    std::string safe;
    safe.reserve(text.size());
    for (const char c : text) {
        switch (c) {
            case '&': safe += "&amp;"; break;
            case '<': safe += "&lt;"; break;
            case '>': safe += "&gt;"; break;
            case '"': safe += "&quot;"; break;
            case '\'': safe += "&#39;"; break;
            default: safe += c;
        }
    }
    return safe;
}

std::string base64(std::span<const std::byte> bytes) {
    static constexpr char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        unsigned group = 0;
        for (std::size_t k = 0; k < 3; ++k) group = group << 8 | (i + k < bytes.size() ? std::to_integer<unsigned>(bytes[i + k]) : 0);
        for (std::size_t k = 0; k < 4; ++k) text += i + k <= bytes.size() ? letters[group >> (18 - 6 * k) & 63] : '=';
    }
    return text;
}

}  // namespace qw::report
