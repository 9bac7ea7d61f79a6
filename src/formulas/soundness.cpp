// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/soundness.h"

#include <cmath>

namespace qw::formulas {

namespace {

constexpr double near = 1e-9;

// What is left of lengths that cancel each other is noise, and not a number because it does not grow.
constexpr double nothing_mm = 1e-9, nothing = 1e-12;

bool is_length(const std::vector<double>& results) {
    for (std::size_t i = 0; i < results.size(); ++i)
        if (std::abs(results[i] - unit_sizes[i] * results[0]) > unit_sizes[i] * (near * std::abs(results[0]) + nothing_mm)) return false;
    return true;
}

bool is_number(const std::vector<double>& results) {
    for (const double result : results)
        if (std::abs(result - results[0]) > near * std::abs(results[0]) + nothing) return false;
    return true;
}

}  // namespace

std::optional<Kind> kind_of(const std::vector<double>& results) {
    const bool length = is_length(results), number = is_number(results);
    if (length && number) return Kind::nothing;
    if (length) return Kind::length;
    if (number) return Kind::number;
    return std::nullopt;
}

}  // namespace qw::formulas
