// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "proof/file_facts.h"
#include "checks/rules.h"
#include "release/kit_sizes.h"
#include "release/look.h"
#include "release/part_plans.h"
#include "release/plan_parts.h"
#include "release/print_sizes.h"
#include "release/read.h"
#include "release/release.h"

namespace qw::release {

namespace {

/// Faces of one file without decoding it: a PDF's pages, else one.
int faces_in(Disk& disk, const kit::ArtworkFile& file) {
    if (!starts_as_pdf(disk, file.path)) return 1;
    const proof::FileFacts facts = proof::inspect(disk, file.path);
    if (!facts.damage.empty()) {
        throw Fault(FaultKind::not_understood,
                    {"artwork-damaged", {file.shown, 0, 0}, "its pages cannot be counted: " + facts.damage, "a whole PDF", "export it again"});
    }
    return static_cast<int>(facts.pages.size());
}

std::map<std::string, std::size_t> pictures_of(Disk& disk, const kit::Set& set) {
    std::map<std::string, std::size_t> pictures;
    for (const auto& [face, files] : set.faces)
        for (const kit::ArtworkFile& file : files) pictures[face] += static_cast<std::size_t>(faces_in(disk, file));
    return pictures;
}

SheetCounts count_sheets(Disk& disk, const kit::Manifest& manifest) {
    SheetCounts counts;
    for (const kit::Set& set : manifest.sets) {
        if (set.role == kit::Role::part) {
            counts.add_parts(set, pictures_of(disk, set));
            continue;
        }
        if (set.role != kit::Role::journal_page && set.role != kit::Role::full_sheet) continue;
        int faces = 0;
        for (const kit::ArtworkFile& file : set.files) faces += faces_in(disk, file);
        counts.add(set, faces);
    }
    return counts;
}

const Paper& paper_of(const ReadKit& kit, const std::optional<std::string>& asked) {
    if (!asked) return kit.manifest.papers.front();
    std::vector<std::string> names;
    for (const Paper& paper : kit.pipeline->papers) {
        if (paper.name == *asked || paper.short_name == *asked) return paper;
        names.push_back(paper.short_name);
    }
    const auto near = nearest_word(*asked, names);
    throw Fault(FaultKind::not_understood, {"unknown-paper",
                                            {"--paper", 0, 0},
                                            "there is no paper '" + *asked + "'",
                                            listed(names) + " or a PWG name of papers.yaml",
                                            near ? "did you mean '" + *near + "'?" : ""});
}

Print print_of(const ReadKit& kit, const std::optional<std::string>& asked) {
    if (!asked) return kit.manifest.prints.front();
    for (const Print print : {Print::borderless, Print::bordered})
        if (name_of(print) == *asked) return print;
    const auto near = nearest_word(*asked, {"borderless", "bordered"});
    throw Fault(FaultKind::not_understood, {"unknown-print",
                                            {"--print", 0, 0},
                                            "there is no print '" + *asked + "'",
                                            "borderless or bordered",
                                            near ? "did you mean '" + *near + "'?" : ""});
}

/// With the levels that are in force for the kit.
void add_part_findings(const ReadKit& kit, const SizedParts& sized, journal::Measures& measures) {
    const checks::Rules rules(kit.pipeline->checks, kit.manifest.overrides);
    for (Finding& finding : sized.findings(measures)) rules.say(measures.findings, std::move(finding));
}

}  // namespace

Measured measure(Disk& disk, const Order& order, const Asked& asked) {
    const ReadKit kit = read(disk, order);
    const Paper& paper = paper_of(kit, asked.paper);
    const Print print = print_of(kit, asked.print);
    SheetCounts counts = count_sheets(disk, kit.manifest);
    counts.filled = filled_parts(kit, counts);
    const journal::Conditions conditions = conditions_of(kit.manifest, *kit.pipeline, *kit.printer, counts, paper, print, asked.percent);
    Measured measured{kit.manifest.kit, kit.journal, journal::compute(*kit.journal, conditions), {}};
    const SizedParts sized(kit, counts, paper, print, asked.percent);
    for (const SizedPart& part : sized.all()) measured.parts.push_back(parts::told(part.net, part.folded, part.set->name, part.count));
    set_levels(kit.manifest, measured.measures.findings);
    add_part_findings(kit, sized, measured.measures);
    return measured;
}

}  // namespace qw::release
