// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_names.h"

#include <algorithm>

namespace qw::kit {

const std::vector<std::string>& given_names() {
    static const std::vector<std::string> names{
        "page_width",    "page_height",   "cover_sheet_width", "cover_sheet_height", "sheets",       "full_sheets",    "page_caliper",
        "cover_caliper", "board_caliper", "spine_caliper",     "page_grammage",      "cover_grammage", "board_printed", "glued_in",
        "print_scale",   "pi",            "stitch_path",       "stitch_strands",     "stitch_inset", "stitch_through",     "min",          "max",            "ceil",
        "floor",         "sqrt",          "abs",               "strands_across"};
    return names;
}

bool is_given_name(const std::string& in_formulas) {
    const auto& given = given_names();
    if (std::find(given.begin(), given.end(), in_formulas) != given.end() || in_formulas.starts_with("has_") || in_formulas.starts_with("without_") ||
        in_formulas.starts_with("thickness_of_"))
        return true;
    for (const std::string line : {"page_station_", "spine_station_"}) {
        const auto digit = [](char c) { return c >= '0' && c <= '9'; };
        if (in_formulas.starts_with(line) && in_formulas.size() > line.size())
            return std::all_of(in_formulas.begin() + static_cast<std::ptrdiff_t>(line.size()), in_formulas.end(), digit);
    }
    return false;
}

void JournalNames::value(const std::string& name, const SourceMark& mark) {
    std::string in_formulas = name;
    std::replace(in_formulas.begin(), in_formulas.end(), '-', '_');
    if (is_given_name(in_formulas))
        faults_.add("reserved-name", mark, in_quotes(name) + " is given to every formula and cannot be defined", "another name");
    else once(values_, in_formulas, name, mark);
}

void JournalNames::thing(const std::string& name, const SourceMark& mark) {
    if (name == page_use || name == page_stations_use || name == spine_stations_use)
        faults_.add("reserved-name", mark, in_quotes(name) + " is what steps call the printed page or its stations", "another name");
    else once(things_, name, name, mark);
}

void JournalNames::once(std::map<std::string, SourceMark>& known, const std::string& key, const std::string& name, const SourceMark& mark) {
    const auto [before, is_new] = known.emplace(key, mark);
    if (is_new) return;
    faults_.add("duplicate-name", mark,
                in_quotes(name) + " is defined a second time; the first is in line " + std::to_string(before->second.line),
                "each name once");
}

}  // namespace qw::kit
