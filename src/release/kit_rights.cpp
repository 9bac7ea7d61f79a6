// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/kit_rights.h"

#include "checks/rights_rules.h"

#include <set>

namespace qw::release {

void check_kit_rights(const ReadKit& kit, const std::vector<LookedSet>& looked, const type::Fonts& fonts, const checks::Rules& rules, Findings& findings) {
    std::vector<checks::FontSeen> seen;
    for (const type::Cut cut : type::all_cuts) seen.push_back({fonts.name(cut), "", fonts.embedding(cut)});
    std::set<std::string> told;  // a font is told once, with the first file that brings it
    for (const LookedSet& set : looked)
        for (const LookedFile& file : set.files)
            for (const proof::PageFacts& page : file.pdf.pages)
                for (const proof::FontFact& font : page.fonts)
                    if (told.insert(font.name).second) seen.push_back({font.name, file.file.shown, 0});
    checks::check_rights(rules, kit.manifest, *kit.pipeline, seen, findings);
    checks::check_embedding(rules, seen, findings);
}

}  // namespace qw::release
