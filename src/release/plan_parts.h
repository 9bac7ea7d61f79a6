// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/part_sheets.h"
#include "compose/parts_sheet.h"
#include "materials/list.h"
#include "release/part_plans.h"
#include "release/plan.h"

#include <deque>
#include <map>
#include <string>
#include <vector>

namespace qw::release {

/// What the sheets for people need of the parts, one paper.
struct PartsOnPaper {
    std::vector<const SizedParts*> prints;         ///< at full size, in the order of the manifest's prints
    std::map<std::string, int> sheets;             ///< by the name of the set, in its first print
};

/// Lays out all sets of parts in all editions: adds their files and findings to the plan. Keeps what was computed for as
/// long as it lives.
class PartPlanner {
public:
    PartPlanner(const ReadKit& kit, const SheetCounts& counts, const checks::Rules& rules, const type::Fonts& fonts);

    void plan(const std::vector<LookedSet>& looked, Plan& plan);
    const PartsOnPaper& on(const Paper& paper) const { return papers_.at(paper.name); }

private:
    void plan_set(const LookedSet& set, Plan& plan);
    void plan_edition(const LookedSet& set, const compose::PartArtwork& artwork, const SizedPart& part, PartsOnPaper& on, Plan& plan);

    const ReadKit& kit_;
    const SheetCounts& counts_;
    const checks::Rules& rules_;
    const type::Fonts& fonts_;
    texts::Passages labels_;
    std::deque<SizedParts> sized_;
    std::map<std::string, PartsOnPaper> papers_;
};

/// The thickness of a folded and filled part of each set, by the kit's first paper and print.
std::map<std::string, Length> filled_parts(const ReadKit& kit, const SheetCounts& counts);

/// What the list of materials adds up, by the kit's first print.
std::vector<materials::PartsMade> parts_made(const PartsOnPaper& on);

/// What the sheet of parts says: `limits` are sentences about what goes in from which scale on.
std::vector<compose::PartOfKit> parts_for_people(const ReadKit& kit, const PartsOnPaper& on);

}  // namespace qw::release
