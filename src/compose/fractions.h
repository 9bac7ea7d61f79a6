// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace qw::compose {

/// Lengths as they are set: "5 5/8 x 8 3/4 in" becomes "5 ⁵⁄₈ × 8 ³⁄₄ in" with superior figures, the fraction slash
/// (U+2044) and inferior figures, a thin space (U+2009) between the whole number and its fraction, and U+00D7 for an x
/// that stands between two numbers. All fractions are composed, because sixteenths have no sign of their own and a
/// sheet must not mix two kinds. Everything else stays as it is.
std::string real_fractions(const std::string& ascii);

/// The way back, for what was taken from a finished sheet; also takes the fractions that have one sign ("½").
std::string plain_fractions(const std::string& set);

}  // namespace qw::compose
