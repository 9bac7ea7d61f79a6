// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/proofing_sheets.h"

namespace qw::release {

/// The fewest sheets that show all of a kit's risks on paper. Points into the plan.
struct ChosenProofs {
    PaperRisks found;
    std::vector<std::size_t> sheets;  ///< indices into found.sheets, ascending
};
ChosenProofs choose_proofs(const Prepared& prepared, const report::AuditReport& report);

report::ProofingSet as_told(const ChosenProofs& chosen);

/// Writes the proofing set as one PDF at `to`, in one step: the check list, then the pages of the chosen sheets as they lie
/// below `made`. `scratch` is an empty folder. Throws Fault, also when the kit has no sheet to print; then `to` is as it was.
void write_proofing_set(Disk& disk, const Prepared& prepared, const ChosenProofs& chosen, const Path& made, const Path& scratch, const Path& to);

}  // namespace qw::release
