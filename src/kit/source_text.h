// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/source.h"

#include <string>
#include <string_view>
#include <vector>

namespace qw::kit {

/// What a manifest or a template may weigh. Ours have some kilobytes; the bound keeps a mistaken file from being read.
inline constexpr std::uint64_t largest_text = std::uint64_t{1} << 20;

/// A text file that people write, and the way from its bytes to lines and columns as an editor shows them.
class SourceText {
public:
    /// Takes the bytes of a file; a byte-order mark is dropped. Throws Fault (not_understood, "bad-utf8" or
    /// "control-character") naming the first place that is no text.
    SourceText(std::string bytes, std::string file);

    const std::string& text() const { return text_; }
    const std::string& file() const { return file_; }
    /// Place of a byte: line from 1, column from 1 in characters.
    SourceMark at_byte(std::size_t byte) const;
    /// Place of a line (from 0) and a column in bytes (from 0); beyond the end becomes the end.
    SourceMark at(int line, int column) const;
    std::size_t byte_of(int line, int column) const;
    /// Line from 0, without its end.
    std::string_view line(int number) const;

private:
    std::string text_, file_;
    std::vector<std::size_t> starts_;  ///< first byte of each line
};

/// The bytes of a file that stands under `shown` in messages. Throws Fault: not_understood when there is none, when it
/// is no ordinary file ("missing-file", "not-a-file") or larger than `largest_text` ("too-large").
std::string read_bytes(Disk& disk, const Path& path, const std::string& shown, const std::string& mend_if_missing = "");

}  // namespace qw::kit
