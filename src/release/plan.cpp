// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/plan.h"

#include "checks/artwork_rules.h"
#include "checks/misprint_rules.h"
#include "checks/motif_rules.h"
#include "checks/picture_rules.h"
#include "release/kit_sizes.h"
#include "release/plan_parts.h"
#include "release/plan_sheets.h"
#include "release/planned_faces.h"
#include "release/sheet_rows.h"

#include <algorithm>

namespace qw::release {

namespace {

/// True if the set can be laid out: what is drawn at its own size needs to have one.
bool check_faces(const LookedSet& set, const std::vector<compose::Face>& faces, const checks::Rules& rules, Findings& findings) {
    std::vector<checks::FaceSeen> seen;
    for (std::size_t i = 0; i < faces.size(); ++i)
        seen.push_back({faces[i].shown, set.faces[i].page, compose::drawn_size(set.set->drawn_at, faces[i])});
    const auto damaged = std::count_if(set.files.begin(), set.files.end(), [](const LookedFile& file) { return !file.damage.empty(); });
    checks::check_set(rules, *set.set, seen, static_cast<std::size_t>(damaged), findings);
    return !seen.empty() && (set.set->place != kit::Place::as_drawn ||
                             std::all_of(seen.begin(), seen.end(), [](const checks::FaceSeen& face) { return face.drawn.has_value(); }));
}

PlannedFile plan_file(const ReadKit& kit, const LookedSet& set, const Edition& edition, const std::vector<compose::Face>& faces) {
    kit::Set held = *set.set;
    // An odd last sheet without a back has been told by its rule; the page is left blank so that the rest can be judged.
    if (!held.last_back) held.last_back = kit::LastBack{std::nullopt, held.mark};
    compose::ArtworkDocument composed = compose::artwork_document(kit.manifest, held, edition, faces, kit.date);
    PlannedFile file;
    file.path = edition.folder() + "/" + held.name + ".pdf";
    file.role = kit::name_of(held.role);
    file.set = held.name;
    file.paper = edition.paper;
    file.print = edition.print;
    file.document = std::move(composed.document);
    file.looked = file.shows = &set;
    file.placements = std::move(composed.pages);
    if (edition.print == Print::bordered) file.margins = edition.margins;
    return file;
}

void plan_set(const ReadKit& kit, const LookedSet& set, const checks::Rules& rules, Plan& plan) {
    check_files(set, rules, plan.findings);
    const std::vector<compose::Face> faces = as_composed(set);
    if (!check_faces(set, faces, rules, plan.findings)) return;
    for (const Paper& paper : kit.manifest.papers) {
        for (const Print print : kit.manifest.prints) {
            const Edition edition = edition_of(*kit.printer, paper, print, set.set->sides);
            PlannedFile file = plan_file(kit, set, edition, faces);
            Findings found;
            std::vector<double> coverage;
            for (std::size_t page = 0; page < file.placements.size(); ++page) {
                const compose::Placement& placement = file.placements[page];
                const ShownArtwork shown = artwork_on(file, page);
                coverage.push_back(shown.ink ? shown.ink->coverage : 0);
                if (!shown.ink) continue;
                checks::check_placement(rules, *set.set, edition, placement, faces[*placement.face].shown, found);
                checks::check_motif(rules, *set.set, edition, {&placement, shown.ink, shown.width, shown.height, faces[*placement.face].shown}, found);
            }
            if (&paper == &kit.manifest.papers.front() && print == kit.manifest.prints.front())
                checks::check_sheet_ink(rules, *set.set, kit.pipeline->stock(set.set->stock.value)->grammage, coverage, file.path, found);
            if (print == Print::borderless && !file.placements.empty())
                checks::check_safe_area_of(rules, *set.set, file.placements.front().scale, paper.title + ", " + name_of(print), found);
            add_new(plan.findings, found);
            plan.files.push_back(std::move(file));
        }
    }
}

}  // namespace

SheetCounts counts_of(const std::vector<LookedSet>& looked) {
    SheetCounts counts;
    for (const LookedSet& set : looked) {
        if (set.set->role != kit::Role::part) {
            counts.add(*set.set, static_cast<int>(set.faces.size()));
            continue;
        }
        std::map<std::string, std::size_t> of_faces;
        for (const auto& [name, pictures] : set.of_part_face) of_faces[name] = pictures.size();
        counts.add_parts(*set.set, of_faces);
    }
    return counts;
}

std::optional<Rect> printable_of(const PlannedFile& file, std::size_t page) {
    if (!file.margins) return std::nullopt;
    return fit_of({file.paper, Print::bordered, *file.margins}, file.document.pages[page].size.landscape()).printable;
}

Plan plan(const ReadKit& kit, const std::vector<LookedSet>& looked, const checks::Rules& rules, const type::Fonts& fonts) {
    Plan plan;
    for (const LookedSet& set : looked)
        if (set.set->role != kit::Role::part) plan_set(kit, set, rules, plan);
    check_together(looked, rules, plan.findings);
    SheetCounts counts = counts_of(looked);
    counts.filled = filled_parts(kit, counts);
    PartPlanner parts(kit, counts, rules, fonts);
    parts.plan(looked, plan);
    plan_sheets(kit, counts, parts, rules, fonts, plan);
    std::sort(plan.files.begin(), plan.files.end(), [](const PlannedFile& a, const PlannedFile& b) { return a.path < b.path; });
    return plan;
}

}  // namespace qw::release
