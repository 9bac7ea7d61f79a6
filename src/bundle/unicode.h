// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>

namespace qw::bundle {

/// Whether a name is in Unicode's normalization form C (UAX #15); a name that is not UTF-8 is in none.
bool is_composed(const std::string& name);

/// What names have in common that are one file where capitals do not count and forms of letters neither: form C of the case
/// folding (Unicode 5.18, UAX #15). Bytes that are not UTF-8 are folded as ASCII.
std::string folded(const std::string& name);

/// How long a name is as Windows counts: in units of UTF-16.
std::size_t length_in_utf16(const std::string& name);

/// A name as findings show it: UTF-8 as it is, other bytes and control characters as \xNN.
std::string shown_name(const std::string& name);

}  // namespace qw::bundle
