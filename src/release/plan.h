// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "checks/rules.h"
#include "compose/placement.h"
#include "journal/measures.h"
#include "release/kit_sizes.h"
#include "release/look.h"
#include "release/read.h"
#include "type/fonts.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::release {

/// One PDF to be: what is drawn, and what it is in the record.
struct PlannedFile {
    std::string path;                              ///< inside the bundle: "letter/borderless/journal-pages.pdf"
    std::string role;                              ///< role of its set, or name of the generated sheet
    std::string set;                               ///< the set's name, or the sheet's, for people
    Paper paper;
    std::optional<Print> print;                    ///< nothing: a sheet that serves every print of its paper
    compose::Document document;
    const LookedSet* looked = nullptr;             ///< artwork documents only
    const LookedSet* shows = nullptr;              ///< the set whose artwork is on its pages, parts too; null: a generated sheet
    std::vector<compose::Placement> placements;    ///< artwork documents only, one a page
    double left_white = 0;                         ///< parts only: share of their faces that nobody sees and that is not printed
    std::vector<std::string> cautions;             ///< the list of materials only: what it has to say, as whole sentences
    std::optional<Margins> margins;                ///< that its printer leaves white on a sheet in portrait; nothing: it prints to the edge
};

/// Where ink may be on a page, counted from 0; nothing: everywhere.
std::optional<Rect> printable_of(const PlannedFile& file, std::size_t page);

/// Everything that is computed before anything is drawn.
struct Plan {
    std::vector<PlannedFile> files;                ///< in the order of the bundle
    Findings findings;                             ///< what is wrong with the kit by its geometry and physics
};

/// Sheets and parts as counted from the artwork.
SheetCounts counts_of(const std::vector<LookedSet>& looked);

Plan plan(const ReadKit& kit, const std::vector<LookedSet>& looked, const checks::Rules& rules, const type::Fonts& fonts);

}  // namespace qw::release
