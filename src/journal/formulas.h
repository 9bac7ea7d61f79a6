// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/reckoning.h"
#include "journal/vocabulary.h"

#include <optional>
#include <vector>

namespace qw::journal {

using formulas::Figure;
using formulas::Figures;
using formulas::Kind;

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
    struct Cut {
        std::size_t slot = 0;
        const kit::Formula* formula = nullptr;
        kit::RoundingRule rule;
    };

    void read(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes);
    void add_cut(const kit::Formula& formula, const kit::RoundingRule& rule, const std::string& place, std::vector<FaultNote>& notes);

    std::optional<kit::Formula> path_;  ///< of the thread, made from the sewing's stations
    std::vector<Cut> cuts_;
    std::optional<Vocabulary> vocabulary_;
    std::optional<formulas::Reckoning> reckoning_;
};

}  // namespace qw::journal
