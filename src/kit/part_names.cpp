// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/part_names.h"

#include <algorithm>

namespace qw::kit {

const std::vector<std::string>& names_given_to_parts() {
    static const std::vector<std::string> names{"print_scale", "stock_caliper", "contents_width", "contents_height", "contents_thickness",
                                                "pi",          "min",           "max",            "ceil",            "floor",
                                                "sqrt",        "abs",           "strands_across"};
    return names;
}

void PartNames::add(const std::string& name, const SourceMark& mark) {
    std::string in_formulas = name;
    std::replace(in_formulas.begin(), in_formulas.end(), '-', '_');
    const auto& given = names_given_to_parts();
    if (std::find(given.begin(), given.end(), in_formulas) != given.end())
        return faults_.add("reserved-name", mark, in_quotes(name) + " is given to every formula and cannot be defined", "another name");
    const auto [before, is_new] = known_.emplace(in_formulas, mark);
    if (is_new) return;
    faults_.add("duplicate-name", mark,
                in_quotes(name) + " is defined a second time; the first is in line " + std::to_string(before->second.line),
                "each name once");
}

}  // namespace qw::kit
