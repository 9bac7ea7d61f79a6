// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/source.h"
#include "kit/faults.h"

#include <map>
#include <string>
#include <vector>

namespace qw::kit {

/// Names that every formula knows: what the buyer printed and has, the thread's way, pi, and the functions.
const std::vector<std::string>& given_names();

/// Whether formulas are given a name, written with underscores, so that no template may define it: one of the above,
/// `has_…`, `without_…`, `thickness_of_…`, or the number of a station (`page_station_1`).
bool is_given_name(const std::string& in_formulas);

/// The names of one template, each used once. What formulas name and what the sheets name are kept apart: a value and
/// a piece may both be called spine-strip.
class JournalNames {
public:
    explicit JournalNames(Faults& faults) : faults_(faults) {}

    /// A length, number or value: not one that is given.
    void value(const std::string& name, const SourceMark& mark);
    /// A piece, cut length, item or figure: not one of the words that stand in a step's `uses` beside them.
    void thing(const std::string& name, const SourceMark& mark);

private:
    void once(std::map<std::string, SourceMark>& known, const std::string& key, const std::string& name, const SourceMark& mark);

    Faults& faults_;
    std::map<std::string, SourceMark> values_, things_;
};

/// What a step may use beside the template's own things.
inline constexpr const char* page_use = "page";
inline constexpr const char* page_stations_use = "page-stations";
inline constexpr const char* spine_stations_use = "spine-stations";

}  // namespace qw::kit
