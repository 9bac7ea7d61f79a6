// SPDX-License-Identifier: GPL-3.0-or-later
#include "record/record_faults.h"

#include "base/words.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

namespace qw::record {

namespace {

bool is_sha256(const std::string& text) {
    return text.size() == 64 && std::all_of(text.begin(), text.end(), [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
}

/// UTF-8, no control characters.
bool is_plain_text(const std::string& text) {
    return !bad_utf8_at(text) && std::none_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
}

/// Relative, forward slashes, no empty part and none that climbs.
bool is_relative_path(const std::string& path) {
    if (!is_plain_text(path) || path.find('\\') != std::string::npos) return false;
    for (std::size_t start = 0; start <= path.size();) {
        const std::size_t end = std::min(path.find('/', start), path.size());
        const std::string_view part = std::string_view(path).substr(start, end - start);
        if (part.empty() || part == "." || part == "..") return false;
        start = end + 1;
    }
    return true;
}

std::string fault_in(const Input& input) {
    const auto begins = [&](std::string_view room) { return input.path.starts_with(room); };
    if (!begins("kit/") && !begins("pipeline/") && !begins("system/")) return "begins with none of kit/, pipeline/ and system/";
    if (!is_relative_path(input.path)) return "is no relative path";
    if (!is_plain_text(input.done)) return "has no plain text for what was done to it";
    if (!is_plain_text(input.rights)) return "has no plain text for its rights";
    return is_sha256(input.sha256) ? "" : "has no SHA-256 digest";
}

std::string fault_in(const File& file) {
    if (!is_relative_path(file.path)) return "is no relative path";
    if (!is_sha256(file.sha256)) return "has no SHA-256 digest";
    if (!is_plain_name(file.role)) return "has no role";
    if (file.paper && (file.paper->empty() || !is_plain_text(*file.paper))) return "has no paper's name for its paper";
    if (file.print && *file.print != "borderless" && *file.print != "bordered") return "has a print that is neither borderless nor bordered";
    return file.pages >= 0 ? "" : "has a number of pages below 0";
}

std::string fault_in(const Bundle& bundle) {
    if (!is_relative_path(bundle.path)) return "is no relative path";
    if (!is_sha256(bundle.sha256)) return "has no SHA-256 digest";
    return bundle.entries >= 0 ? "" : "has a number of entries below 0";
}

std::string shown(const std::string& path) { return is_plain_text(path) ? "'" + path + "'" : "a path that is no text"; }

/// First fault of a list, or a double; `key` tells values apart.
template <typename T, typename Key>
std::string fault_in_list(const std::vector<T>& values, const std::string& kind, Key key) {
    std::set<decltype(key(values.front()))> seen;
    for (const T& value : values) {
        const std::string fault = fault_in(value);
        if (!fault.empty()) return kind + " " + shown(value.path) + " " + fault;
        if (!seen.insert(key(value)).second) return kind + " " + shown(value.path) + " stands there twice";
    }
    return "";
}

std::string fault_in_bundle_names(const ReleaseRecord& record) {
    std::set<std::string> bundles;
    for (const Bundle& bundle : record.bundles) bundles.insert(bundle.path);
    for (const File& file : record.files)
        if (!bundles.contains(file.bundle)) return "the file " + shown(file.path) + " is in " + shown(file.bundle) + ", which is no bundle of this release";
    return "";
}

}  // namespace

std::string fault_in_record(const ReleaseRecord& record) {
    if (!is_plain_name(record.kit)) return "the kit has no name";
    if (record.version.empty() || !is_plain_text(record.version)) return "the kit has no version";
    if (record.tool.empty() || !is_plain_text(record.tool)) return "the tool has no name";
    const auto path = [](const auto& value) { return value.path; };
    for (const std::string& fault :
         {fault_in_list(record.inputs, "the input", path), fault_in_list(record.bundles, "the bundle", path),
          fault_in_list(record.files, "the file", [](const File& f) { return std::make_pair(f.path, f.bundle); }), fault_in_bundle_names(record)})
        if (!fault.empty()) return fault;
    return "";
}

}  // namespace qw::record
