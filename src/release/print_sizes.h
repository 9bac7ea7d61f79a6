// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "release/kit_sizes.h"
#include "release/read.h"

#include <vector>

namespace qw::release {

/// The sizes that the sheets show, in per cent of the buyer's own choice, the largest first: every one from 103 to 90,
/// where printers and their drivers err, then every fifth.
const std::vector<double>& shown_percents();

/// The journal at each of these sizes, for one print of one paper, findings with the kit's levels. Points into the kit.
std::vector<compose::SizeColumn> sizes_of(const ReadKit& kit, const SheetCounts& counts, const Paper& paper, Print print);

/// The column of 100 %.
const compose::SizeColumn& full_size(const std::vector<compose::SizeColumn>& columns);

/// Gives the findings of the journal's own checks the levels that the kit's `rules` set for them, and drops those that
/// are off.
void set_levels(const kit::Manifest& manifest, Findings& findings);

/// What the journal's own checks say of one size, with the paper, print and size in words.
Findings journal_findings(const compose::SizeColumn& column);

}  // namespace qw::release
