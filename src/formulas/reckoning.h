// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/asked.h"
#include "formulas/figures.h"
#include "formulas/names.h"
#include "formulas/program.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace qw::formulas {

/// The formulas of one template, read once and put in the order in which they follow from each other. The template must
/// outlive it. Not for two threads at once.
class Reckoning {
public:
    /// `named` get the slots from `names.first_evaluated()` on, in their order; `others` have no name. Adds a note for all
    /// that is wrong with the formulas as they are written.
    Reckoning(Names names, const std::vector<Asked>& named, const std::vector<Asked>& others, std::vector<FaultNote>& notes);
    Reckoning(const Reckoning&) = delete;
    Reckoning& operator=(const Reckoning&) = delete;

    const Names& names() const { return names_; }

    /// Fills the slots of what is known. Lengths are millimetres times `unit`: the size of the unit in which this
    /// evaluation counts.
    using Fill = std::function<void(std::vector<double>& slots, double unit)>;

    /// Every formula, in five sizes of the unit: a length must grow with the unit, a number must not. Throws Fault with all
    /// results that are neither, not finite or not what is asked for where the formula stands; `where` is said after them:
    /// " (A4, bordered, print scale 0.914)".
    Figures in(const Fill& fill, const std::string& where);

    /// Once more, with the values in `instead` in place of what these slots would be.
    Figures again(const Fill& fill, const Figures& exact, const std::vector<std::optional<double>>& instead);

private:
    struct Line {
        Asked asked;
        std::optional<Program> program;
        std::optional<std::size_t> slot;  ///< where a named value goes
    };

    void add_line(const Asked& asked, std::optional<std::size_t> slot, std::vector<FaultNote>& notes);
    void put_in_order(std::size_t named, std::vector<FaultNote>& notes);
    /// The note on a formula whose results are neither: what in it does not go together.
    FaultNote unsound(const Asked& asked, const Fill& fill, const std::vector<std::vector<double>>& results) const;
    /// What a formula that is only a name stands for: ", from 'page_width - 2 * gap'"; else empty.
    std::string behind(const Asked& asked) const;

    Names names_;
    std::vector<double> slots_;
    std::vector<Line> lines_;  ///< what has a name in the order in which it follows from each other, then the rest
};

}  // namespace qw::formulas
