// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/source_text.h"

#include "base/words.h"
#include "kit/faults.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// First byte that no text holds, or npos. The YAML library would take 0x04 for the end of the file and bytes of 0
/// for another encoding (YAML 1.2.2, 5.1: of the C0 characters only tab, line feed and carriage return are allowed).
std::size_t control_at(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        const bool lone_return = c == '\r' && (i + 1 == text.size() || text[i + 1] != '\n');
        if ((c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0x7f || lone_return) return i;
    }
    return std::string_view::npos;
}

[[noreturn]] void refuse(const std::string& code, const SourceMark& where, const std::string& what, const std::string& expected,
                         const std::string& mend) {
    throw Fault(FaultKind::not_understood, {code, where, what, expected, mend});
}

}  // namespace

SourceText::SourceText(std::string bytes, std::string file) : text_(std::move(bytes)), file_(std::move(file)) {
    if (text_.starts_with("\xef\xbb\xbf")) text_.erase(0, 3);
    starts_.push_back(0);
    for (std::size_t i = 0; i < text_.size(); ++i)
        if (text_[i] == '\n') starts_.push_back(i + 1);
    if (const auto bad = bad_utf8_at(text_))
        refuse("bad-utf8", at_byte(*bad), "a byte that is not UTF-8: " + in_quotes(std::string_view(text_).substr(*bad, 1)), "UTF-8 text",
               "save the file as UTF-8");
    if (const std::size_t bad = control_at(text_); bad != std::string_view::npos)
        refuse("control-character", at_byte(bad), "a control character: " + in_quotes(std::string_view(text_).substr(bad, 1)),
               "text with lines that end in LF or CR LF", "save the file as plain UTF-8 text");
}

SourceMark SourceText::at_byte(std::size_t byte) const {
    byte = std::min(byte, text_.size());
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), byte);
    const std::size_t start = *(after - 1);
    const std::size_t column = characters_in(std::string_view(text_).substr(start), byte - start);
    return {file_, static_cast<int>(after - starts_.begin()), static_cast<int>(column) + 1};
}

SourceMark SourceText::at(int line, int column) const { return at_byte(byte_of(line, column)); }

std::size_t SourceText::byte_of(int line, int column) const {
    if (line < 0 || column < 0) return 0;
    if (static_cast<std::size_t>(line) >= starts_.size()) return text_.size();
    return std::min(starts_[static_cast<std::size_t>(line)] + static_cast<std::size_t>(column), text_.size());
}

std::string_view SourceText::line(int number) const {
    if (number < 0 || static_cast<std::size_t>(number) >= starts_.size()) return {};
    const std::size_t start = starts_[static_cast<std::size_t>(number)];
    std::string_view rest = std::string_view(text_).substr(start);
    rest = rest.substr(0, rest.find('\n'));
    return rest.ends_with('\r') ? rest.substr(0, rest.size() - 1) : rest;
}

std::string read_bytes(Disk& disk, const Path& path, const std::string& shown, const std::string& mend_if_missing) {
    const SourceMark where{shown, 0, 0};
    const auto real = disk.resolve(path);
    const auto there = real ? disk.stat(*real) : std::nullopt;
    if (!there)
        refuse("missing-file", where, "there is no " + shown + " in " + in_quotes(path.parent_path().string()), "", mend_if_missing);
    if (there->type != FileType::file) refuse("not-a-file", where, "it is no ordinary file", "a text file", "");
    if (there->size > largest_text)
        refuse("too-large", where, "the file has " + std::to_string(there->size) + " bytes", "at most " + std::to_string(largest_text), "");
    return read_text(disk, *real, largest_text);
}

}  // namespace qw::kit
