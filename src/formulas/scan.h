// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/asked.h"

#include <cstddef>
#include <string>
#include <vector>

namespace qw::formulas {

/// A word of a formula and the character it begins at.
struct Word {
    enum class Kind { name, number, sign } kind = Kind::sign;
    std::string text;
    std::size_t at = 0;
};

/// The functions that formulas may call.
const std::vector<std::string>& function_names();

/// Cuts a formula into words and refuses, as a Fault with the formula's line, all that the language of formulas does
/// not hold (formulas.md): units, text, assignment, powers, a second result, comparisons in a chain. Whether the
/// words make sense together is left to whoever evaluates them.
std::vector<Word> words_of(const Asked& asked);

}  // namespace qw::formulas
