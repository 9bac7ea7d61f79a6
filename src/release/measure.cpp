// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "proof/file_facts.h"
#include "release/kit_sizes.h"
#include "release/look.h"
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
        throw Fault(FaultKind::not_understood, {"artwork-damaged", {file.shown, 0, 0}, "its pages cannot be counted: " + facts.damage, "a whole PDF", "export it again"});
    }
    return static_cast<int>(facts.pages.size());
}

SheetCounts count_sheets(Disk& disk, const kit::Manifest& manifest) {
    SheetCounts counts;
    for (const kit::Set& set : manifest.sets) {
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
    throw Fault(FaultKind::not_understood, {"unknown-paper", {"--paper", 0, 0}, "there is no paper '" + *asked + "'", listed(names) + " or a PWG name of papers.yaml",
                                            near ? "did you mean '" + *near + "'?" : ""});
}

Print print_of(const ReadKit& kit, const std::optional<std::string>& asked) {
    if (!asked) return kit.manifest.prints.front();
    for (const Print print : {Print::borderless, Print::bordered})
        if (name_of(print) == *asked) return print;
    const auto near = nearest_word(*asked, {"borderless", "bordered"});
    throw Fault(FaultKind::not_understood, {"unknown-print", {"--print", 0, 0}, "there is no print '" + *asked + "'", "borderless or bordered", near ? "did you mean '" + *near + "'?" : ""});
}

}  // namespace

Measured measure(Disk& disk, const Order& order, const Asked& asked) {
    const ReadKit kit = read(disk, order);
    const journal::Conditions conditions = conditions_of(kit.manifest, *kit.pipeline, *kit.printer, count_sheets(disk, kit.manifest),
                                                         paper_of(kit, asked.paper), print_of(kit, asked.print), asked.percent);
    Measured measured{kit.manifest.kit, kit.journal, journal::compute(*kit.journal, conditions)};
    set_levels(kit.manifest, measured.measures.findings);
    return measured;
}

}  // namespace qw::release
