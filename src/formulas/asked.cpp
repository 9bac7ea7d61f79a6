// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/asked.h"

#include <algorithm>

namespace qw::formulas {

std::string formula_name(const std::string& name) {
    std::string written = name;
    std::replace(written.begin(), written.end(), '-', '_');
    return written;
}

FaultNote note_on(const Asked& asked, std::string code, const std::string& what, std::string expected, std::string mend) {
    constexpr std::size_t longest = 200;  // a message, not a listing
    std::string text = asked.formula->text;
    if (text.size() > longest) text = text.substr(0, longest) + "...";
    return {std::move(code), asked.formula->mark, asked.place + ", '" + text + "', " + what, std::move(expected), std::move(mend)};
}

Fault fault_on(const Asked& asked, std::string code, const std::string& what, std::string expected, std::string mend) {
    return Fault(FaultKind::not_understood, note_on(asked, std::move(code), what, std::move(expected), std::move(mend)));
}

}  // namespace qw::formulas
