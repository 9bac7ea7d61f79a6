// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/plan_sheets.h"

#include "compose/materials_sheet.h"
#include "compose/measurements_sheet.h"
#include "compose/print_check_sheet.h"
#include "materials/list.h"

#include <algorithm>
#include <cstdio>

namespace qw::release {

namespace {

/// The sizes that the sheet shows, in per cent of the buyer's own choice.
constexpr double shown_percents[] = {100, 95, 90, 85, 80, 75, 70, 65, 60, 55, 50};

class SheetPlanner {
public:
    SheetPlanner(const ReadKit& kit, const SheetCounts& counts, const type::Fonts& fonts, const Paper& paper, Plan& plan)
        : kit_(kit), counts_(counts), paper_(paper), context_{kit.manifest, *kit.pipeline, paper, fonts, kit.date}, plan_(plan) {}

    void plan_all() {
        const std::vector<compose::SizeColumn> columns = sizes();
        add("measurements", compose::measurements_sheet(context_, columns));
        add("materials", compose::materials_sheet(context_, materials::count(kit_.manifest, *kit_.pipeline, columns.front().measures, counts_.of_set)));
        add("print-check", compose::print_check_sheet(context_, {turned(), {std::begin(shown_percents), std::end(shown_percents)}}));
    }

private:
    std::vector<compose::SizeColumn> sizes() {
        const kit::JournalTemplate& journal = kit_.pipeline->journals.at(*kit_.manifest.journal);
        std::vector<compose::SizeColumn> columns;
        for (const Print print : kit_.manifest.prints) {
            for (const double percent : shown_percents) {
                char label[16];
                std::snprintf(label, sizeof label, "%.0f %%", percent);
                columns.push_back({label, percent, print,
                                   journal::compute(journal, conditions_of(kit_.manifest, *kit_.pipeline, *kit_.printer, counts_, paper_, print, percent))});
                // A smaller size that fails is explained on the sheet; full size must hold.
                if (percent == 100) tell(columns.back().measures, print);
            }
        }
        return columns;
    }

    void tell(const journal::Measures& measures, Print print) {
        for (Finding finding : measures.findings) {
            finding.file = measures.journal->file;
            finding.message += " (" + paper_.title + ", " + name_of(print) + ", 100 %)";
            plan_.findings.push_back(std::move(finding));
        }
    }

    /// As the kit's duplex sheets are turned, so that the offset that is read is theirs.
    compose::Duplex turned() const {
        for (const PlannedFile& file : plan_.files)
            if (file.document.duplex != compose::Duplex::simplex) return file.document.duplex;
        return compose::Duplex::simplex;
    }

    void add(const std::string& name, compose::Document document) {
        PlannedFile file;
        file.path = paper_.short_name + "/" + name + ".pdf";
        file.role = name;
        file.set = name;
        file.paper = paper_;
        // The print check draws into the margins on purpose: what of it is printed is what it tells.
        if (name != "print-check") file.printable = fit_of(edition_of(*kit_.printer, paper_, Print::bordered, kit::Sides::single), false).printable;
        file.document = std::move(document);
        plan_.files.push_back(std::move(file));
    }

    const ReadKit& kit_;
    const SheetCounts counts_;
    const Paper paper_;
    const compose::SheetContext context_;
    Plan& plan_;
};

}  // namespace

void plan_sheets(const ReadKit& kit, const SheetCounts& counts, const type::Fonts& fonts, Plan& plan) {
    for (const Paper& paper : kit.manifest.papers) SheetPlanner(kit, counts, fonts, paper, plan).plan_all();
}

}  // namespace qw::release
