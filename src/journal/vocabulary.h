// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/names.h"
#include "journal/measures.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace qw::journal {

/// The way of one signature's thread, as formulas call it.
inline constexpr const char* path_name = "stitch_path";
/// What its turns and its ways through are made of, where the sewing says them.
inline constexpr const char* inset_name = "stitch_inset";
inline constexpr const char* through_name = "stitch_through";

/// All names that the formulas of one template may use, each with the number of the slot where its value stands:
/// first what is known before anything is evaluated (conditions, the template's lengths and numbers, what is chosen),
/// then what is evaluated: values, stations of the page and of the spine, and when it is sewn what turns and ways through
/// are made of, where that is said, and the thread's path.
class Vocabulary {
public:
    /// Adds a note for each name that is there twice or cannot be written in a formula.
    Vocabulary(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes);

    const formulas::Names& names() const { return names_; }

    /// Fills the slots of everything that is known before anything is evaluated. Lengths are millimetres times `unit`: the size of the unit in
    /// which this evaluation counts, 1 for millimetres. Printed lengths shrink with the print scale.
    void fill(std::vector<double>& slots, const Conditions& conditions, UnitSystem system, double unit) const;

private:
    void add_chosen();
    void add_thicknesses();
    void add_stations(const std::string& line, std::size_t count);

    const kit::JournalTemplate& journal_;
    formulas::Names names_;
    std::vector<double> chosen_;      ///< stitch_strands, each has_… and without_…, in the order of their words
    std::vector<kit::BothLengths> thicknesses_;  ///< each thickness_of_…
};

}  // namespace qw::journal
