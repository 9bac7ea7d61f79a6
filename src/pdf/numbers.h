// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"

#include <string>

namespace qw::pdf {

/// Numbers as PDF writes them (ISO 32000-1 7.3.3): no exponent, no locale, no needless digits.

/// In points; within half a millionth of a point.
std::string number(Length length);
/// Plain numbers and the entries of matrices, to eight decimals. Throws Fault (not_carried_out) when it is not finite.
std::string number(double value);
/// To as many decimals as bring back the very same double; for values that are handed on from another PDF.
std::string exact_number(double value);

/// "x y"
std::string numbers(Point point);
/// "a b c d e f"
std::string numbers(const Matrix& matrix);

}  // namespace qw::pdf
