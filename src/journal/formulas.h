// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/asked.h"
#include "journal/program.h"
#include "journal/vocabulary.h"

#include <optional>
#include <unordered_map>
#include <vector>

namespace qw::journal {

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

/// All formulas of one template, read and put in order. The template must outlive it. Not for two threads at once.
class Formulas {
public:
    /// Throws Fault with all that is wrong with the formulas as they are written.
    explicit Formulas(const kit::JournalTemplate& journal);
    Formulas(const Formulas&) = delete;
    Formulas& operator=(const Formulas&) = delete;

    /// Every formula, in five sizes of the unit: a length must grow with the unit, a number must not. Throws Fault
    /// with all results that are neither, not finite or not what is asked for where the formula stands.
    Figures in(UnitSystem system, const Conditions& conditions);

    /// The thread's way; nothing when the journal is not sewn. Lives as long as this.
    const kit::Formula* path() const { return path_ ? &*path_ : nullptr; }

    /// Once more with the sizes as they are shown: a value that alone is a piece's width or height, or a cut length,
    /// is replaced by its rounded self, and what follows from it is computed again.
    Figures rounded(UnitSystem system, const Conditions& conditions, const Figures& exact);

private:
    struct Line {
        Asked asked;
        std::optional<Program> program;
        std::optional<std::size_t> slot;  ///< where a named value goes
    };
    struct Cut {
        std::size_t slot = 0;
        const kit::Formula* formula = nullptr;
        kit::RoundingRule rule;
    };

    void add_line(const Asked& asked, std::vector<FaultNote>& notes);
    void read(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes);
    /// What a formula that is only a name stands for: ", from 'page_width - 2 * gap'"; else empty.
    std::string behind(const Asked& asked) const;
    void put_in_order(std::vector<FaultNote>& notes);
    void add_cut(const kit::Formula& formula, const kit::RoundingRule& rule, const std::string& place, std::vector<FaultNote>& notes);

    std::vector<double> slots_;
    std::vector<Line> lines_;      ///< what has a name in the order in which it follows from each other, then the rest
    std::size_t named_ = 0;        ///< how many of the lines have a name
    std::optional<kit::Formula> path_;  ///< of the thread, made from the sewing's stations
    std::vector<Cut> cuts_;
    std::optional<Vocabulary> vocabulary_;
};

}  // namespace qw::journal
