// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/journal_template.h"
#include "kit/node.h"

#include <string>
#include <vector>

namespace qw::kit {

/// What a template may name outside itself.
struct JournalContext {
    std::vector<std::string> tools, materials;  ///< keys of materials.yaml
};

/// Reads a journal template whose tree is `root`; `file` is "pipeline/journals/NAME.yaml". The format's page is
/// src/kit/journal-template.md. Formulas are taken as texts: what they mean is found out where they are evaluated.
JournalTemplate read_journal(const Node& root, const std::string& file, const JournalContext& context, Faults& faults);

/// Names that every formula knows: what the buyer printed and has, pi, and the functions. No template may define them.
const std::vector<std::string>& given_names();

}  // namespace qw::kit
