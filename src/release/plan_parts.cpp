// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/plan_parts.h"

#include "base/words.h"
#include "checks/part_rules.h"
#include "release/part_artwork.h"
#include "release/planned_faces.h"
#include "release/print_sizes.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::release {

namespace {

bool has_parts(const kit::Manifest& manifest) {
    return std::any_of(manifest.sets.begin(), manifest.sets.end(), [](const kit::Set& set) { return set.role == kit::Role::part; });
}

std::string per_cent(double share, double (*whole)(double)) {
    char text[32];
    std::snprintf(text, sizeof text, "%g %%", whole(share * 1000 - 1e-6) / 10);
    return text;
}

/// The smallest print of this part that takes the thing, as its widest pocket stands.
std::optional<double> smallest_for(const SizedPart& part, const kit::Thing& thing, const kit::PartRules& rules) {
    Length widest;
    for (const parts::Pocket& pocket : part.net.pockets) widest = max(widest, parts::room_of(part.net, part.folded, pocket).width);
    return parts::smallest_scale(widest / part.scale, thing.size.as_portrait().width, rules.clearance);
}

/// "Index card, 3 x 5 in: goes in when the part is printed at 98 % of its drawn size or larger; bordered prints at 91.4 % do
/// not take it."
std::string limit_of(const std::vector<const SizedPart*>& prints, const kit::Thing& thing, const kit::PartRules& rules) {
    const auto least = smallest_for(*prints.front(), thing, rules);
    if (!least) return thing.title + ": does not go in at any size.";
    std::string text = thing.title + ": goes in when the part is printed at " + per_cent(*least, std::ceil) + " of its drawn size or larger";
    for (const SizedPart* part : prints)
        if (part->scale + 1e-9 < *least) text += "; " + name_of(part->edition.print) + " at 100 % is " + per_cent(part->scale, std::floor) + " and does not take it";
    return text + ".";
}

void add_edition_findings(const SizedParts& sized, const journal::Measures& measures, const checks::Rules& rules, Findings& findings) {
    for (const char* rule : {"part-tears", "part-passes-through", "part-inner-panel", "part-tab-uncovered", "part-face-turned", "part-face-hidden", "part-layers",
                             "part-goes-in", "part-goes-on", "part-hole-reach"})
        rules.tried(rule, sized.all().size());
    for (Finding& finding : sized.findings(measures)) rules.say(findings, std::move(finding));
}

/// How many pages a PDF has is known when it has been looked at: then each face must have a picture for every part, one
/// for all, or a stated back for the rest.
void check_face_counts(const LookedSet& set, const checks::Rules& rules, Findings& findings) {
    rules.tried("part-face-count");
    std::size_t most = 0;
    for (const auto& [name, pictures] : set.of_part_face) most = std::max(most, pictures.size());
    for (const auto& [name, pictures] : set.of_part_face) {
        if (pictures.size() == most || pictures.size() == 1 || set.set->last_back) continue;
        rules.say(findings, {"part-face-count", Level::error, "kit.yaml", 0, set.set->mark.line, std::to_string(pictures.size()) + " pictures",
                             std::to_string(most) + ", or one for all",
                             "The face '" + name + "' of set " + set.set->name + " has fewer pictures than there are parts",
                             "Add the missing pictures, or say with 'last-back' what the others have"});
    }
}

}  // namespace

PartPlanner::PartPlanner(const ReadKit& kit, const SheetCounts& counts, const checks::Rules& rules, const type::Fonts& fonts)
    : kit_(kit), counts_(counts), rules_(rules), fonts_(fonts), labels_(compose::passages_of(*kit.pipeline, "part-labels")) {
    for (const Paper& paper : kit.manifest.papers) {
        PartsOnPaper& on = papers_[paper.name];
        for (const Print print : kit.manifest.prints) on.prints.push_back(&sized_.emplace_back(kit, counts, paper, print, 100));
    }
}

void PartPlanner::plan(const std::vector<LookedSet>& looked, Plan& plan) {
    if (!has_parts(kit_.manifest)) return;
    for (const LookedSet& set : looked) {
        if (set.set->role != kit::Role::part) continue;
        check_files(set, rules_, plan.findings);
        check_face_counts(set, rules_, plan.findings);
        if (!set.faces.empty()) plan_set(set, plan);
    }
    journal::Calculation calculation(*kit_.journal);
    for (const Paper& paper : kit_.manifest.papers) {
        Findings found;
        for (std::size_t i = 0; i < kit_.manifest.prints.size(); ++i) {
            const auto conditions = conditions_of(kit_.manifest, *kit_.pipeline, *kit_.printer, counts_, paper, kit_.manifest.prints[i], 100);
            add_edition_findings(*papers_.at(paper.name).prints[i], calculation.at(conditions), rules_, found);
        }
        add_new(plan.findings, found);
    }
}

void PartPlanner::plan_set(const LookedSet& set, Plan& plan) {
    const compose::PartArtwork artwork = part_artwork(set, as_composed(set));
    for (const Paper& paper : kit_.manifest.papers) {
        PartsOnPaper& on = papers_.at(paper.name);
        for (const SizedParts* sized : on.prints) plan_edition(set, artwork, *sized->of(set.set->name), on, plan);
    }
}

void PartPlanner::plan_edition(const LookedSet& set, const compose::PartArtwork& artwork, const SizedPart& part, PartsOnPaper& on, Plan& plan) {
    compose::PartDocument made = compose::part_document(kit_.manifest, *set.set, part.edition, part.net, part.folded, artwork, kit_.pipeline->part_rules, fonts_,
                                                          labels_, kit_.date);
    Findings found;
    checks::check_part_fits(rules_, *set.set, part.edition, made, part.scale, found);
    for (const compose::PartPicture& picture : made.pictures)
        checks::check_part_picture(rules_, *set.set, part.edition, picture, artwork.faces[picture.art].shown, found);
    add_new(plan.findings, found);
    on.sheets.emplace(set.set->name, static_cast<int>(made.sheets));
    if (made.document.pages.empty()) return;
    PlannedFile file;
    file.path = part.edition.folder() + "/" + set.set->name + ".pdf";
    file.role = kit::name_of(set.set->role);
    file.set = set.set->name;
    file.paper = part.edition.paper;
    file.print = part.edition.print;
    if (part.edition.print == Print::bordered) file.margins = part.edition.margins;
    file.left_white = made.saved;
    file.shows = &set;
    file.document = std::move(made.document);
    plan.files.push_back(std::move(file));
}

std::map<std::string, Length> filled_parts(const ReadKit& kit, const SheetCounts& counts) {
    std::map<std::string, Length> thick;
    if (!has_parts(kit.manifest)) return thick;
    const SizedParts sized(kit, counts, kit.manifest.papers.front(), kit.manifest.prints.front(), 100);
    for (const SizedPart& part : sized.all()) thick[part.set->name] = sized.filled(part);
    return thick;
}

std::vector<materials::PartsMade> parts_made(const PartsOnPaper& on) {
    std::vector<materials::PartsMade> made;
    for (const SizedPart& part : on.prints.front()->all()) made.push_back({part.set, part.count, &part.net, &part.folded});
    return made;
}

std::vector<compose::PartOfKit> parts_for_people(const ReadKit& kit, const PartsOnPaper& on) {
    std::vector<compose::PartOfKit> all;
    for (const kit::Set& set : kit.manifest.sets) {
        if (set.role != kit::Role::part) continue;
        std::vector<const SizedPart*> prints;
        for (const SizedParts* sized : on.prints) prints.push_back(sized->of(set.name));
        compose::PartOfKit one;
        one.title = spaced_name(set.name);
        one.title[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(one.title[0])));
        one.set = &set;
        one.count = prints.front()->count;
        for (const SizedPart* part : prints) one.prints.push_back({part->edition.print, &part->net, &part->folded});
        for (const auto& name : set.holds) one.limits.push_back(limit_of(prints, *kit.pipeline->thing(*name), kit.pipeline->part_rules));
        all.push_back(std::move(one));
    }
    return all;
}

}  // namespace qw::release
