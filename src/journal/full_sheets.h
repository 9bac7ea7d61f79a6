// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"

#include <optional>

namespace qw::journal {

/// How many printed full sheets a journal is cut from.
struct FullSheets {
    int needed = 0;
    int in_kit = 0;          ///< how many different ones the kit has
    bool exact = true;       ///< it is proved that fewer will not do
};

/// The pieces of the stock "cover", in the sizes that the sheets tell people with the paper's own ruler, on full sheets
/// as they are printed and trimmed (Conditions::cover_sheet): straight cuts, every piece's grain along the sheet's longer
/// side, where ordinary paper has it. Nothing where the kit has no full sheets, none of them is cut, or a piece does not
/// fit on one, which the template's own checks tell.
std::optional<FullSheets> full_sheets(const Measures& measures);

/// "full-sheets-enough", a note: more are needed than there are different ones. Nothing where the kit has enough.
std::optional<Finding> too_few_full_sheets(const Measures& measures);

/// What the buyer does who needs more sheets than there are different ones: "print one of them twice".
std::string print_again(const FullSheets& sheets);

}  // namespace qw::journal
