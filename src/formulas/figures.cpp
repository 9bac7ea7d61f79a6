// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/figures.h"

#include <cmath>

namespace qw::formulas {

Figure Figures::at(const kit::Formula& formula) const {
    const auto found = by_formula_.find(&formula);
    return found == by_formula_.end() ? Figure{} : found->second;
}

int Figures::count(const kit::Formula& formula) const { return static_cast<int>(std::lround(at(formula).value)); }

}  // namespace qw::formulas
