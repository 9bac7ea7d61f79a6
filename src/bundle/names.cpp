// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include "base/words.h"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace qw::bundle {

namespace {

constexpr std::size_t longest_name = 180;
constexpr std::size_t longest_part = 255;  // of ext4 and APFS

bool portable(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '.';
}

std::string fault_in_part(std::string_view part) {
    if (part.empty()) return "it has an empty part";
    if (part == "." || part == "..") return "a part of it is '" + std::string(part) + "'";
    if (part.back() == '.') return "a part of it ends with a dot";
    if (is_device_name(part)) return "'" + std::string(part) + "' is a device's name on Windows";
    return "";
}

/// Between slashes; of a folder's entry the empty part behind its slash is left out.
std::vector<std::string> parts_of(const std::string& name) {
    std::vector<std::string> parts;
    for (std::size_t start = 0; start < name.size();) {
        const std::size_t end = std::min(name.find('/', start), name.size());
        parts.push_back(name.substr(start, end - start));
        start = end + 1;
    }
    return parts;
}

}  // namespace

std::string fault_elsewhere(const std::string& name) {
    if (name.empty()) return "it is empty";
    for (const std::string& part : parts_of(name.front() == '/' ? name.substr(1) : name)) {
        if (part == "..") continue;  // an escape, which is told by itself
        if (part.empty() || part == ".") return "it has an empty part";
        if (part.size() > longest_part) return "a part of it has more than " + std::to_string(longest_part) + " bytes";
        if (const std::string fault = fault_on_windows(part); !fault.empty()) return fault;
    }
    return "";
}

std::string escape_in_name(const std::string& name) {
    std::string slashed = name;
    std::replace(slashed.begin(), slashed.end(), '\\', '/');
    if (slashed.starts_with('/')) return "it is an absolute path";
    if (slashed.size() > 1 && slashed[1] == ':' && std::isalpha(static_cast<unsigned char>(slashed[0])) && (slashed.size() == 2 || slashed[2] == '/'))
        return "it names a drive";
    for (const std::string& part : parts_of(slashed))
        if (part == "..") return "it climbs out of its folder";
    return "";
}

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
