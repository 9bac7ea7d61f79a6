// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"
#include "kit/journal_template.h"

#include <unordered_map>

namespace qw::formulas {

/// What a result turned out to be. `nothing` is zero in every unit, which is a length as well as a number.
enum class Kind { number, length, nothing };

struct Figure {
    double value = 0;   ///< a plain number, or millimetres
    Kind kind = Kind::nothing;
};

/// The results of one evaluation, by the formula that gave them. Asking for a formula that was left out gives nothing.
class Figures {
public:
    void set(const kit::Formula& formula, Figure figure) { by_formula_[&formula] = figure; }
    Figure at(const kit::Formula& formula) const;
    Length length(const kit::Formula& formula) const { return Length::mm(at(formula).value); }
    /// A count; it was found to be whole.
    int count(const kit::Formula& formula) const;

private:
    std::unordered_map<const kit::Formula*, Figure> by_formula_;
};

}  // namespace qw::formulas
