// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/proofing_sheet.h"
#include "release/make.h"

#include <string>
#include <vector>

namespace qw::release {

/// Something that goes wrong only on paper.
struct PaperRisk {
    std::string told;             ///< as JSON and records name it: "edition letter bordered", "both-faces journal-pages"
    compose::ProofTask task;      ///< what there is to look at
};

/// A sheet of paper that could be printed to see.
struct ProvableSheet {
    const PlannedFile* file = nullptr;
    std::vector<int> pages;       ///< counted from 1: one, or front and back
    std::vector<std::size_t> shows;  ///< indices into the risks
};

struct PaperRisks {
    std::vector<PaperRisk> risks;
    std::vector<ProvableSheet> sheets;  ///< every sheet of the kit, in the plan's order
};

/// All that can go wrong with this kit on paper, found from its plan, its artwork and what its audit has said; and which
/// sheets would show it. `report` holds a row for each page of the plan's files, in their order, and the findings.
PaperRisks paper_risks(const Prepared& prepared, const report::AuditReport& report);

}  // namespace qw::release
