// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/document.h"
#include "compose/sheet.h"

#include <string>
#include <vector>

namespace qw::compose {

/// One thing to look at on a sheet: a passage of pipeline/texts/proofing.mustache by its name, and what it is given. Where
/// there is a passage NAME-blank that says something, there is a line to write a reading on.
struct ProofTask {
    std::string name;
    texts::Model model;
};

/// One sheet of paper to be printed.
struct ProofSheet {
    std::string file;              ///< path inside the bundle
    std::vector<int> pages;        ///< of that file, counted from 1: one, or front and back
    std::string paper;             ///< title
    std::string stock;             ///< title; empty: plain paper
    Duplex turned = Duplex::simplex;
    std::vector<ProofTask> tasks;  ///< never empty
};

/// The check list of a proofing set; in the finished file the pages of the sheets follow its own, in their order.
/// `tools`: keys of the tools that looking needs, whose cautions stand at the end.
Document proofing_sheet(const SheetContext& context, const std::vector<ProofSheet>& sheets, const std::vector<std::string>& tools);

}  // namespace qw::compose
