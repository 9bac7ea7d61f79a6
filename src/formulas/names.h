// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace qw::formulas {

/// All names that the formulas of one template may use, each with the number of the slot where its value stands: first
/// what is known before anything is evaluated, then what is evaluated.
class Names {
public:
    /// A word that is given, not written in the template.
    void give(const std::string& word) { words_.push_back(word); }
    /// A name of the template, hyphens and all. Adds a note when it is there twice or cannot be written in a formula, and
    /// gives it a slot even then: the slots follow the template's order.
    void add(const std::string& name, const SourceMark& mark, std::vector<FaultNote>& notes);
    /// What is added from here on is evaluated.
    void begin_evaluated() { first_evaluated_ = words_.size(); }

    std::size_t size() const { return words_.size(); }
    const std::vector<std::string>& words() const { return words_; }
    std::optional<std::size_t> find(const std::string& word) const;
    /// The slot of the first value; all from there on are evaluated.
    std::size_t first_evaluated() const { return first_evaluated_; }

private:
    std::vector<std::string> words_;
    std::size_t first_evaluated_ = 0;
};

}  // namespace qw::formulas
