// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace qw::bundle {

namespace {

constexpr std::size_t longest_name = 180;

bool portable(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '.';
}

/// Device names of Windows, which it finds with any extension too: "nul.txt" is NUL (Microsoft, "Naming Files,
/// Paths, and Namespaces").
bool is_device(std::string_view part) {
    constexpr std::array<std::string_view, 4> plain{"con", "prn", "aux", "nul"};
    const std::string_view stem = part.substr(0, part.find('.'));
    if (std::find(plain.begin(), plain.end(), stem) != plain.end()) return true;
    return stem.size() == 4 && (stem.starts_with("com") || stem.starts_with("lpt")) && stem[3] >= '1' && stem[3] <= '9';
}

std::string fault_in_part(std::string_view part) {
    if (part.empty()) return "it has an empty part";
    if (part == "." || part == "..") return "a part of it is '" + std::string(part) + "'";
    if (part.back() == '.') return "a part of it ends with a dot";
    if (is_device(part)) return "'" + std::string(part) + "' is a device's name on Windows";
    return "";
}

}  // namespace

std::string fault_in_name(const std::string& name) {
    if (name.empty()) return "it is empty";
    if (name.size() > longest_name)
        return "it has " + std::to_string(name.size()) + " bytes, more than " + std::to_string(longest_name);
    if (name.front() == '/') return "it begins with a slash";
    const auto odd = std::find_if(name.begin(), name.end(), [](char c) { return c != '/' && !portable(c); });
    if (odd != name.end()) return "it has other characters than a-z 0-9 - _ . and /";
    for (std::size_t start = 0; start <= name.size();) {
        const std::size_t end = std::min(name.find('/', start), name.size());
        const std::string fault = fault_in_part(std::string_view(name).substr(start, end - start));
        if (!fault.empty()) return fault;
        start = end + 1;
    }
    return "";
}

}  // namespace qw::bundle
