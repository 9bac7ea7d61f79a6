// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/asked.h"
#include "kit/journal_template.h"

#include <vector>

namespace qw::journal {

/// How many of a template's formulas, the first ones, have a name.
std::size_t named_formulas(const kit::JournalTemplate& journal);

/// Every formula of the template: the named values first, then the stations and what the sewing's path is made of, which
/// have names too, then the others. `bulk`, `creep`
/// and what a check shows may be left out; an empty text elsewhere is for the readers of the formulas to refuse.
std::vector<formulas::Asked> formulas_of(const kit::JournalTemplate& journal);

}  // namespace qw::journal
