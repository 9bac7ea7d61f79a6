// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace qw::texts {

/// Lines parted by LF, CR LF or CR; the last may lack its end.
std::vector<std::string> lines_of(const std::string& text);

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A line in the characters that figures and units are read in: quotes straight, blanks plain, dashes "-", × and a star
/// between figures "x", ½ and its like " 1/2", ² "2"; ASCII in lower case. Emphasis and invisible characters are left out.
std::string plain_line(const std::string& line);

}  // namespace qw::texts
