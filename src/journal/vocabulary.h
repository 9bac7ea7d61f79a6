// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/asked.h"
#include "journal/measures.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace qw::journal {

/// All names that the formulas of one template may use, each with the number of the slot where its value stands:
/// first what the conditions give, then the template's lengths, numbers and values.
class Vocabulary {
public:
    /// Adds a note for each name that is there twice or cannot be written in a formula.
    Vocabulary(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes);

    std::size_t size() const { return words_.size(); }
    const std::vector<std::string>& words() const { return words_; }
    std::optional<std::size_t> find(const std::string& word) const;

    /// Fills the slots of everything but the values. Lengths are millimetres times `unit`: the size of the unit in
    /// which this evaluation counts, 1 for millimetres. Printed lengths shrink with the print scale.
    void fill(std::vector<double>& slots, const Conditions& conditions, UnitSystem system, double unit) const;

private:
    void add(const std::string& name, const SourceMark& mark, std::vector<FaultNote>& notes);

    const kit::JournalTemplate& journal_;
    std::vector<std::string> words_;
};

}  // namespace qw::journal
