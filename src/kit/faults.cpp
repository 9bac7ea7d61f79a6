// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/faults.h"

#include "base/words.h"

#include <algorithm>
#include <cstdio>
#include <tuple>

namespace qw::kit {

void Faults::add(std::string code, const SourceMark& where, std::string what, std::string expected, std::string mend) {
    notes_.push_back({std::move(code), where, std::move(what), std::move(expected), std::move(mend)});
}

void Faults::add(const Fault& fault) {
    if (fault.kind() != FaultKind::not_understood) throw fault;
    notes_.insert(notes_.end(), fault.notes().begin(), fault.notes().end());
}

void Faults::add(const Faults& others) { notes_.insert(notes_.end(), others.notes_.begin(), others.notes_.end()); }

void Faults::throw_if_any() const {
    if (notes_.empty()) return;
    std::vector<FaultNote> sorted = notes_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const FaultNote& a, const FaultNote& b) {
        return std::tie(a.where.file, a.where.line, a.where.column) < std::tie(b.where.file, b.where.line, b.where.column);
    });
    throw Fault(FaultKind::not_understood, std::move(sorted));
}

namespace {

constexpr std::size_t longest_quote = 60;

std::string escaped(unsigned char byte) {
    char text[8];
    std::snprintf(text, sizeof text, "\\x%02x", byte);
    return text;
}

/// Bytes of the character that begins at `at`, 0 if it is not UTF-8.
std::size_t character_at(std::string_view text, std::size_t at) {
    for (std::size_t length = 1; length <= 4 && at + length <= text.size(); ++length)
        if (!bad_utf8_at(text.substr(at, length))) return length;
    return 0;
}

}  // namespace

std::string in_quotes(std::string_view text) {
    std::string out = "'";
    std::size_t shown = 0;
    for (std::size_t i = 0; i < text.size(); ++shown) {
        if (shown == longest_quote) return out + "…'";
        const std::size_t length = character_at(text, i);
        const auto byte = static_cast<unsigned char>(text[i]);
        const bool control = length == 1 && (byte < 0x20 || byte == 0x7f);
        if (length == 0 || control) {
            out += escaped(byte);
            ++i;
        } else {
            out += text.substr(i, length);
            i += length;
        }
    }
    return out + "'";
}

}  // namespace qw::kit
