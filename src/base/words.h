// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace qw {

/// The word of `known` that was most likely meant: fewest edits (Damerau-Levenshtein), at most a third of the
/// letters; nothing when none is near.
std::optional<std::string> nearest_word(const std::string& written, const std::vector<std::string>& known);

/// "a, b or c"
std::string listed(const std::vector<std::string>& words, const std::string& last = "or");

/// Natural order: digits by value, all else bytewise, so that page-2 comes before page-10. A strict order: equal
/// values with other zeros ("2", "02") are told apart by their bytes.
bool natural_less(std::string_view a, std::string_view b);

/// Byte offset of the first fault in UTF-8 (RFC 3629), or nothing.
std::optional<std::size_t> bad_utf8_at(std::string_view text);
/// Characters in the first `bytes` of valid UTF-8.
std::size_t characters_in(std::string_view text, std::size_t bytes);

/// a–z, 0–9, hyphen; starts and ends with no hyphen; 1 to 64 characters.
bool is_plain_name(std::string_view text);

/// A–Z as a–z, all else as it is.
std::string in_lower_case(std::string text);

/// A device of Windows, which takes its name with any extension, in any case (Microsoft, "Naming Files, Paths, and
/// Namespaces"): "nul.txt" is NUL. `part`: one part of a path.
bool is_device_name(std::string_view part);

/// Why one part of a path is no file's name on Windows, or "" (Microsoft, "Naming Files, Paths, and Namespaces"): its characters,
/// control characters, a space or dot at the end, a device's name.
std::string fault_on_windows(std::string_view part);

/// What desktops and editors leave behind in folders, by the last part of a path.
bool is_litter(std::string_view path);

/// "full-sheets" becomes "full sheets": a name as people read it.
std::string spaced_name(std::string name);

}  // namespace qw
