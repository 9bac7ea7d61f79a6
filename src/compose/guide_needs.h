// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "journal/measures.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What a step takes beside its own pieces, and what has to be said about it.
struct StepNeeds {
    std::vector<const kit::Tool*> tools;  ///< the step's, then those that only its things need; each once
    std::vector<std::string> cautions;    ///< keys: of these tools, of materials, and of alternatives' tools and materials
};

/// For each step that stands at the measures' size. Throws Fault (not_understood) for a tool that the pipeline does not have.
std::vector<StepNeeds> needs_of_steps(const SheetContext& context, const journal::Measures& measures);

/// The same for all tools and things of the template, whichever step they belong to.
StepNeeds needs_of_journal(const SheetContext& context, const journal::Measures& measures);

/// Tools by name. Throws as above, at `mark`.
const kit::Tool& guide_tool(const SheetContext& context, const std::string& name, const SourceMark& mark);

/// What is said of care in each step.
struct StepCare {
    std::vector<std::string> cautions;  ///< texts of those that no earlier step has called for
    std::vector<int> as_in;             ///< numbers of the steps where the others stand, ascending
};
struct Care {
    std::vector<std::string> first;     ///< texts of those that always hold, and of those that no step calls for but the journal does
    std::vector<StepCare> steps;
};

/// In the order of the pipeline's cautions; none is lost. Throws Fault (not_understood) for one that the pipeline does not have.
Care care_of(const SheetContext& context, const journal::Measures& measures);

}  // namespace qw::compose
