// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/figures.h"

#include <array>
#include <optional>
#include <vector>

namespace qw::formulas {

/// The sizes of the unit in which a formula is evaluated. Common sizes find sums of a length and a number, and
/// products of lengths. The two extreme ones find a length that is compared with a number: in one of them every
/// length is larger than any number that a template holds, in the other smaller, so that the comparison turns over.
/// They are powers of two, so that they change no digit of a result.
inline constexpr std::array<double, 5> unit_sizes = {1, 2.5, 1.0 / 7, 1073741824.0, 1.0 / 1073741824.0};

/// What results in these unit sizes, in this order, are: a length grows with the unit, a number does not, each
/// within 1e-9; nothing else is either.
std::optional<Kind> kind_of(const std::vector<double>& results);

}  // namespace qw::formulas
