// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"

#include <string>
#include <vector>

namespace qw::compose {

/// The size of a thing, set with real fractions: in the paper's own ruler and in the other one.
struct GuideSize {
    std::string print;         ///< "bordered"; empty: it holds for every print of the kit
    std::string own, other;    ///< `other` is empty where both rulers say the same; `own` is a dash for a print that is not shown
};

/// What stands beside a step: a thing that is measured, cut or taken in it, or a fact about the whole journal.
struct GuideThing {
    std::string count, title;  ///< "2 ×", or empty where nothing is counted
    std::vector<GuideSize> sizes;
    std::vector<std::string> remarks;  ///< that it may be left out, its grain, what may stand in for it
};

struct GuideStep {
    std::string title;
    std::vector<std::string> paragraphs;
    std::vector<GuideThing> things;
    std::string tools;                 ///< "awl and piercing mat", or empty
    std::vector<std::string> cautions; ///< whole, because they apply here first
    std::string as_before;             ///< "as in steps 2 and 4", or empty
    std::string drawing;               ///< as in the template
};

/// The guide as words, in the order in which they stand; nothing of it is placed yet.
struct GuideContent {
    std::vector<std::string> introduction;
    std::vector<GuideThing> facts;     ///< finished size, pages, sheets and signatures
    std::vector<std::string> cautions; ///< that hold whatever the step, and those of things that no step uses
    std::vector<GuideStep> steps;
};

/// `full` as in guide_sheet.h; not empty. Words: pipeline/texts/guide.mustache and measurements.mustache.
/// Throws Fault (not_understood), each at its step: a name that a step's text is not given, a thing or tool that is unknown.
GuideContent guide_content(const SheetContext& context, const std::vector<SizeColumn>& full, const texts::Passages& words);

}  // namespace qw::compose
