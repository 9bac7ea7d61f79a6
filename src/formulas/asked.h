// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "kit/journal_template.h"

#include <string>
#include <vector>

namespace qw::formulas {

/// What a formula has to give where it stands.
enum class Want {
    any,
    number,
    count,      ///< a number, whole and not negative
    length,     ///< not negative
    size,       ///< a length, more than nothing
    coordinate  ///< a length, on either side of nothing
};

/// One formula of a template, where it stands and what is asked of it. Points into the template.
struct Asked {
    const kit::Formula* formula = nullptr;
    std::string place;     ///< "board.width", for faults
    Want want = Want::any;
};

/// "page-width" → "page_width": how a formula writes a name.
std::string formula_name(const std::string& name);

/// A note about a formula, at its line and column. `what` goes on after the place and the formula's text:
/// "board.width, 'page_width + 1' …".
FaultNote note_on(const Asked& asked, std::string code, const std::string& what, std::string expected = {},
                  std::string mend = {});
Fault fault_on(const Asked& asked, std::string code, const std::string& what, std::string expected = {},
               std::string mend = {});

}  // namespace qw::formulas
