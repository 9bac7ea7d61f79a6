// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/store_files.h"

#include "base/digest.h"
#include "base/fault.h"

#include <charconv>
#include <optional>

namespace qw::engine::store_files {

namespace {

constexpr std::string_view pin_title = "quirewright pin ", uses_title = "quirewright uses ";
constexpr std::uint64_t store_format = 1;
constexpr std::size_t digest_digits = 64;
constexpr std::uint64_t largest = std::uint64_t{1} << 28;  // bytes; own limit

std::string sealed(std::string text) { return text + sha256_of(text) + "\n"; }

std::optional<std::uint64_t> counted(std::string_view text) {
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return number;
}

std::string_view take_line_of(std::string_view& text) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    return line;
}

/// What stands between the title and the digest of all before it; nothing when it is damaged. Its lines are whole.
std::optional<std::string_view> body_in(std::string_view text, std::string_view title, const Path& file) {
    std::string_view rest = text;
    const std::string_view first = take_line_of(rest);
    const auto number = first.starts_with(title) ? counted(first.substr(title.size())) : std::nullopt;
    if (number && *number > store_format)
        throw Fault(FaultKind::not_carried_out, {"newer-store", {file.string(), 0, 0}, "the store was written by a newer version of this program",
                                                 "format " + std::to_string(store_format), "use the newer version"});
    if (number != store_format || rest.size() < digest_digits + 1) return std::nullopt;
    const std::size_t body = text.size() - digest_digits - 1;
    if (sealed(std::string(text.substr(0, body))) != text) return std::nullopt;
    rest.remove_suffix(digest_digits + 1);
    return rest;
}

}  // namespace

std::string text_of_pin(const std::vector<FileDigest>& files) {
    std::string text = std::string(pin_title) + std::to_string(store_format) + "\n";
    for (const FileDigest& file : files) text += file.sha256 + " " + std::to_string(file.bytes) + "\n";
    return sealed(std::move(text));
}

std::vector<FileDigest> read_pin(Disk& disk, const Path& file) {
    const std::string text = read_text(disk, file, largest);
    auto body = body_in(text, pin_title, file);
    std::vector<FileDigest> files;
    while (body && !body->empty()) {
        const std::string_view line = take_line_of(*body);
        const auto bytes = line.size() > digest_digits ? counted(line.substr(digest_digits + 1)) : std::nullopt;
        if (bytes) files.push_back({*bytes, std::string(line.substr(0, digest_digits))});
        else body.reset();
    }
    if (body) return files;
    throw Fault(FaultKind::not_carried_out, {"damaged-store", {file.string(), 0, 0}, "the list of what is kept for a published version is damaged", "",
                                             "bring it back from a backup, or remove it: what it names is then no longer kept for good"});
}

std::string text_of_uses(std::uint64_t run, const std::map<std::string, std::uint64_t>& uses) {
    std::string text = std::string(uses_title) + std::to_string(store_format) + "\n" + std::to_string(run) + "\n";
    for (const auto& [digest, last] : uses) text += digest + " " + std::to_string(last) + "\n";
    return sealed(std::move(text));
}

std::uint64_t read_uses(Disk& disk, const Path& file, std::map<std::string, std::uint64_t>& uses) {
    uses.clear();
    const auto there = disk.stat(file);
    if (!there || there->type != FileType::file || there->size > largest) return 0;
    const std::string text = read_text(disk, file, largest);
    auto body = body_in(text, uses_title, file);
    if (!body) return 0;
    const auto run = counted(take_line_of(*body));
    while (run && !body->empty()) {
        const std::string_view line = take_line_of(*body);
        if (const auto last = line.size() > digest_digits ? counted(line.substr(digest_digits + 1)) : std::nullopt)
            uses.emplace_hint(uses.end(), line.substr(0, digest_digits), *last);
    }
    return run.value_or(0);
}

}  // namespace qw::engine::store_files
