// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/formulas.h"

#include <vector>

namespace qw::journal {

/// One evaluation that the template's own checks are held against.
struct Reading {
    Figures figures;
    UnitSystem system = UnitSystem::metric;
    bool rounded = false;
    bool own = true;     ///< the paper's own unit system
};

/// The checks that do not hold in one of the readings, each told once, from the first reading in which it fails.
/// What fails only with the other ruler than the paper's own is at most a warning: that ruler's values stand beside
/// the ones that are cut from. In a message, {measured}, {limit} and {difference} become the values shown.
/// Throws Fault when what a check shows is not of one kind or its level is none.
Findings failed_checks(const kit::JournalTemplate& journal, const std::vector<Reading>& readings);

}  // namespace qw::journal
