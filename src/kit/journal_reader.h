// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/journal_template.h"
#include "kit/node.h"
#include "kit/pipeline.h"

#include <string>
#include <vector>

namespace qw::kit {

/// What a template may name outside itself: what materials.yaml holds. And the bytes of its file, for the places of tags in
/// the texts of steps; without them these are told where their text begins.
struct JournalContext {
    const std::vector<Tool>& tools;
    const std::vector<Material>& materials;
    std::string bytes{};
};

/// Reads a journal template whose tree is `root`; `file` is "pipeline/journals/NAME.yaml". The format's page is
/// src/kit/journal-template.md. Formulas are taken as texts: what they mean is found out where they are evaluated.
JournalTemplate read_journal(const Node& root, const std::string& file, const JournalContext& context, Faults& faults);

}  // namespace qw::kit
