// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/kept.h"

#include "base/digest.h"
#include "base/fault.h"

#include <cstdint>

namespace qw::engine {

namespace {

constexpr std::string_view head = "quirewright kept 1\n";
constexpr std::size_t digest_length = 64, length_bytes = 8;

std::uint64_t number_at(const std::string& text, std::size_t at) {
    std::uint64_t number = 0;
    for (std::size_t i = length_bytes; i-- > 0;) number = number << 8 | static_cast<unsigned char>(text[at + i]);
    return number;
}

void append_number(std::string& text, std::uint64_t number) {
    for (std::size_t i = 0; i < length_bytes; ++i) text += static_cast<char>(number >> (8 * i) & 0xff);
}

/// The whole file when it is one of ours; empty otherwise.
std::string whole_file(Disk& disk, const Path& file) {
    const auto stat = disk.stat(file);
    if (!stat || stat->type != FileType::file || stat->size < head.size() + digest_length || stat->size > Kept::largest) return {};
    std::string text = read_text(disk, file, Kept::largest);
    if (text.size() < head.size() + digest_length || !text.starts_with(head)) return {};
    const std::size_t body = text.size() - digest_length;
    if (sha256_of(std::string_view(text).substr(0, body)) != std::string_view(text).substr(body)) return {};
    text.resize(body);
    return text;
}

}  // namespace

Kept::Kept(Disk& disk, const Path& file, Use use) : disk_(file.empty() ? nullptr : &disk), file_(file), use_(use) {
    if (!disk_) return;
    const std::string text = whole_file(disk, file);
    for (std::size_t at = head.size(); at + digest_length + length_bytes <= text.size();) {
        const std::uint64_t length = number_at(text, at + digest_length);
        const std::size_t begin = at + digest_length + length_bytes;
        if (length > text.size() - begin) break;
        values_[text.substr(at, digest_length)].bytes = text.substr(begin, static_cast<std::size_t>(length));
        at = begin + static_cast<std::size_t>(length);
    }
    knows_ = !values_.empty();
}

std::optional<std::string> Kept::find(const std::string& key) {
    const std::lock_guard lock(mutex_);
    const auto found = values_.find(key);
    if (found == values_.end()) return std::nullopt;
    found->second.used = true;
    return found->second.bytes;
}

void Kept::add(const std::string& key, std::string value) {
    if (!adds()) return;
    const std::lock_guard lock(mutex_);
    values_[key] = {std::move(value), true};
    added_ = true;
}

void Kept::save() {
    if (!disk_) return;
    const std::lock_guard lock(mutex_);
    if (!added_) return;
    std::uint64_t bytes = 0;
    for (const auto& [key, value] : values_) bytes += value.bytes.size();
    if (bytes > comfortable) std::erase_if(values_, [](const auto& entry) { return !entry.second.used; });
    std::string text(head);
    for (const auto& [key, value] : values_) {
        text += key;
        append_number(text, value.bytes.size());
        text += value.bytes;
    }
    text += sha256_of(text);
    write_file(*disk_, file_, text);
    added_ = false;
}

}  // namespace qw::engine
