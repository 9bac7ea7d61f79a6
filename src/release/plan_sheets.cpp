// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/plan_sheets.h"

#include "checks/motif_rules.h"
#include "compose/gauges_sheet.h"
#include "compose/guide_sheet.h"
#include "compose/hole_jig_sheet.h"
#include "compose/materials_sheet.h"
#include "compose/measurements_sheet.h"
#include "compose/print_check_sheet.h"
#include "materials/list.h"
#include "release/board_supply.h"
#include "release/duplex_files.h"
#include "release/planned_faces.h"
#include "release/print_sizes.h"
#include "release/sheet_rows.h"
#include "release/smaller_sizes.h"

#include <algorithm>
#include <iterator>

namespace qw::release {

namespace {

/// The sizes whose readings stand on the print check itself; the measurements sheet has all.
const std::vector<double> often_printed = {103, 100, 98, 97, 96, 95, 94, 93, 92, 91, 90};

class SheetPlanner {
public:
    SheetPlanner(const ReadKit& kit, const SheetCounts& counts, const PartsOnPaper& parts, const type::Fonts& fonts, const Paper& paper, const checks::Rules& rules,
                 SizesThatFail& smaller, Plan& plan)
        : kit_(kit), counts_(counts), parts_(parts), paper_(paper), context_{kit.manifest, *kit.pipeline, paper, fonts, kit.date}, rules_(rules), smaller_(smaller),
          plan_(plan) {}

    void plan_all() {
        std::vector<compose::SizeColumn> all, full;
        for (const Print print : kit_.manifest.prints) {
            std::vector<compose::SizeColumn> columns = sizes_of(kit_, counts_, paper_, print);
            full.push_back(full_size(columns));
            jig(full.back(), columns);
            append(plan_.findings, journal_findings(full.back()));
            smaller_.add(columns);
            motifs_at_stations(full.back());
            append(all, std::move(columns));
        }
        std::vector<compose::PlannedCutting> cuttings;
        for (const compose::SizeColumn& column : full) cuttings.push_back(cutting_of(column, boards_for(kit_, paper_)));
        add("guide", compose::guide_sheet(context_, full));
        add("gauges", compose::gauges_sheet(context_, full.front().measures));
        add("measurements", compose::measurements_sheet(context_, all));
        if (!cuttings.front().plans.empty()) add("cutting-plan", compose::cutting_plan_sheet(context_, cuttings));
        materials(materials::count(kit_.manifest, *kit_.pipeline, full.front().measures, counts_.of_set, boards_needed(kit_, cuttings.front()), parts_made(parts_)));
        if (auto parts = compose::parts_sheet(context_, parts_for_people(kit_, parts_))) add("parts", std::move(*parts));
        add("print-check", compose::print_check_sheet(context_, {turned(), often_printed, duplex_files(plan_.files, paper_)}));
    }

private:
    template <typename List>
    static void append(List& list, List more) {
        list.insert(list.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    }

    /// As the kit's duplex sheets are turned, so that the offset that is read is theirs.
    compose::Duplex turned() const {
        for (const PlannedFile& file : plan_.files)
            if (file.document.duplex != compose::Duplex::simplex) return file.document.duplex;
        return compose::Duplex::simplex;
    }

    /// What stands where the fold is pierced. The bordered print shows the same of a picture, smaller.
    void motifs_at_stations(const compose::SizeColumn& size) {
        const journal::Measures& measures = size.measures;
        if (size.print == Print::bordered || !measures.sewing || measures.sewing->of->from_the_side()) return;
        Findings found;
        for (const PlannedFile& file : plan_.files) {
            if (!file.looked || file.looked->set->role != kit::Role::journal_page || file.paper.name != paper_.name || file.print != size.print) continue;
            for (std::size_t page = 0; page < file.placements.size(); ++page) {
                const compose::Placement& placement = file.placements[page];
                const ShownArtwork shown = artwork_on(file, page);
                if (!shown.ink || !placement.sheet.landscape()) continue;
                std::vector<Point> holes;
                for (const journal::Shown& station : measures.page_stations) holes.push_back({placement.sheet.width / 2, placement.sheet.height - station.rounded});
                const std::string& name = file.looked->file_of(file.looked->faces[*placement.face]).file.shown;
                checks::check_holes(rules_, holes, "sewing holes", " on " + paper_.title, {&placement, shown.ink, shown.width, shown.height, name}, found);
            }
        }
        add_new(plan_.findings, found);
    }

    /// The holes of one print: its jig lies with the pages of that print, and is printed as they are.
    void jig(const compose::SizeColumn& full, const std::vector<compose::SizeColumn>& of_print) {
        if (auto document = compose::hole_jig_sheet(context_, full, of_print)) add("hole-jig", std::move(*document), full.print);
    }

    void materials(const materials::List& list) {
        add("materials", compose::materials_sheet(context_, list));
        for (const kit::Caution& caution : list.cautions) plan_.files.back().cautions.push_back(caution.text);
    }

    /// A sheet of one print, or one that serves all prints of its paper.
    void add(const std::string& name, compose::Document document, std::optional<Print> print = std::nullopt) {
        PlannedFile file;
        file.path = paper_.short_name + "/" + (print ? name_of(*print) + "/" : "") + name + ".pdf";
        file.print = print;
        file.role = name;
        file.set = name;
        file.paper = paper_;
        // The print check draws into the margins on purpose: what of it is printed is what it tells.
        if (name != "print-check") file.margins = edition_of(*kit_.printer, paper_, Print::bordered, kit::Sides::single).margins;
        file.document = std::move(document);
        plan_.files.push_back(std::move(file));
    }

    const ReadKit& kit_;
    const SheetCounts counts_;
    const PartsOnPaper& parts_;
    const Paper paper_;
    const compose::SheetContext context_;
    const checks::Rules& rules_;
    SizesThatFail& smaller_;
    Plan& plan_;
};

/// With the sheets that the parts take on this paper.
SheetCounts counts_on(SheetCounts counts, const PartsOnPaper& parts) {
    for (const auto& [set, sheets] : parts.sheets) counts.of_set[set] = sheets;
    return counts;
}

}  // namespace

void plan_sheets(const ReadKit& kit, const SheetCounts& counts, const PartPlanner& parts, const checks::Rules& rules, const type::Fonts& fonts, Plan& plan) {
    rules.tried("no-journal-pages");
    if (counts.journal_sheets == 0) {
        rules.say(plan.findings, {"no-journal-pages", Level::error, "kit.yaml", 0, 0, "0 sheets", "1 sheet or more",
                                  "The kit has no journal pages, so there is no journal to measure.", "Add a set with 'role: journal-page'."});
        return;
    }
    SizesThatFail smaller(rules);
    for (const Paper& paper : kit.manifest.papers)
        SheetPlanner(kit, counts_on(counts, parts.on(paper)), parts.on(paper), fonts, paper, rules, smaller, plan).plan_all();
    smaller.tell(plan.findings);
}

}  // namespace qw::release
