// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/proofing_set.h"

#include "base/fault.h"
#include "checks/fewest_sheets.h"
#include "kit/stock_of.h"
#include "pdf/draw.h"
#include "proof/gather_pages.h"

#include <algorithm>

namespace qw::release {

namespace {

/// A risk is told at the first of the chosen sheets that shows it, as far as one reading of it does.
std::vector<std::vector<std::size_t>> risks_told(const ChosenProofs& chosen) {
    std::vector<std::vector<std::size_t>> tasks;
    std::vector<std::size_t> told;
    for (const std::size_t sheet : chosen.sheets) {
        tasks.emplace_back();
        for (const std::size_t risk : chosen.found.sheets[sheet].shows) {
            if (std::find(told.begin(), told.end(), risk) != told.end()) continue;
            told.push_back(risk);
            tasks.back().push_back(risk);
        }
    }
    return tasks;
}

std::vector<compose::ProofSheet> check_list_of(const Prepared& prepared, const ChosenProofs& chosen) {
    const auto tasks = risks_told(chosen);
    std::vector<compose::ProofSheet> sheets;
    for (std::size_t i = 0; i < chosen.sheets.size(); ++i) {
        const ProvableSheet& from = chosen.found.sheets[chosen.sheets[i]];
        compose::ProofSheet sheet{from.file->path, from.pages, from.file->paper.title, "", from.file->document.duplex, {}};
        if (from.file->shows) sheet.stock = kit::stock_of(prepared.kit.manifest, *prepared.kit.pipeline, *from.file->shows->set->stock).title;
        for (const std::size_t risk : tasks[i]) sheet.tasks.push_back(chosen.found.risks[risk].task);
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

/// The tools of the parts that are cut out, which bring their cautions.
std::vector<std::string> tools_to_look(const Prepared& prepared, const ChosenProofs& chosen) {
    std::vector<std::string> tools;
    for (const std::size_t index : chosen.sheets) {
        const LookedSet* shows = chosen.found.sheets[index].file->shows;
        if (!shows || shows->set->role != kit::Role::part) continue;
        const auto part = prepared.kit.pipeline->parts.find(*shows->set->part);
        if (part != prepared.kit.pipeline->parts.end()) tools.insert(tools.end(), part->second.tools.begin(), part->second.tools.end());
    }
    return tools;
}

/// What all sheets say, or nothing where they differ.
std::string duplex_of(const ChosenProofs& chosen) {
    const auto turned = [&](std::size_t i) { return chosen.found.sheets[chosen.sheets[i]].file->document.duplex; };
    for (std::size_t i = 1; i < chosen.sheets.size(); ++i)
        if (turned(i) != turned(0)) return "";
    // The check list itself has one side, so a set of sheets with two is mixed.
    return turned(0) == compose::Duplex::simplex ? "Simplex" : "";
}

}  // namespace

ChosenProofs choose_proofs(const Prepared& prepared, const report::AuditReport& report) {
    ChosenProofs chosen{paper_risks(prepared, report), {}};
    std::vector<checks::Shows> shows;
    for (const ProvableSheet& sheet : chosen.found.sheets) shows.push_back(sheet.shows);
    chosen.sheets = checks::fewest_sheets(shows, chosen.found.risks.size());
    return chosen;
}

report::ProofingSet as_told(const ChosenProofs& chosen) {
    report::ProofingSet told;
    for (const PaperRisk& risk : chosen.found.risks) told.risks.push_back(risk.told);
    for (const std::size_t index : chosen.sheets) {
        const ProvableSheet& sheet = chosen.found.sheets[index];
        told.sheets.push_back({sheet.file->path, sheet.pages, {}});
        for (const std::size_t risk : sheet.shows) told.sheets.back().shows.push_back(chosen.found.risks[risk].told);
    }
    return told;
}

void write_proofing_set(Disk& disk, const Prepared& prepared, const ChosenProofs& chosen, const Path& made, const Path& scratch, const Path& to) {
    const kit::Manifest& manifest = prepared.kit.manifest;
    if (chosen.sheets.empty())
        throw Fault(FaultKind::not_understood,
                    {"nothing-to-print", {"kit.yaml", 0, 0}, "the kit has no sheet that could be printed", "a set with artwork", ""});
    const compose::SheetContext context{manifest, *prepared.kit.pipeline, manifest.papers.front(), prepared.fonts, prepared.kit.date};
    const compose::Document list = compose::proofing_sheet(context, check_list_of(prepared, chosen), tools_to_look(prepared, chosen));
    const Path list_file = scratch / "check-list.pdf";
    pdf::draw(disk, list_file, list, prepared.fonts);
    std::vector<proof::TakenPage> pages;
    for (std::size_t i = 1; i <= list.pages.size(); ++i) pages.push_back({list_file, static_cast<int>(i)});
    for (const std::size_t index : chosen.sheets)
        for (const int page : chosen.found.sheets[index].pages) pages.push_back({made / chosen.found.sheets[index].file->path, page});
    write_file(disk, to, [&](Sink& sink) { proof::gather_pages(disk, pages, {list.title, duplex_of(chosen)}, sink); });
}

}  // namespace qw::release
