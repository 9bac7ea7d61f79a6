// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/plan_sheets.h"

#include "compose/materials_sheet.h"
#include "compose/measurements_sheet.h"
#include "compose/print_check_sheet.h"
#include "materials/list.h"
#include "release/print_sizes.h"

#include <algorithm>
#include <iterator>

namespace qw::release {

namespace {

class SheetPlanner {
public:
    SheetPlanner(const ReadKit& kit, const SheetCounts& counts, const type::Fonts& fonts, const Paper& paper, Plan& plan)
        : kit_(kit), counts_(counts), paper_(paper), context_{kit.manifest, *kit.pipeline, paper, fonts, kit.date}, plan_(plan) {}

    void plan_all() {
        std::vector<compose::SizeColumn> all, full;
        for (const Print print : kit_.manifest.prints) {
            std::vector<compose::SizeColumn> columns = sizes_of(kit_, counts_, paper_, print);
            full.push_back(full_size(columns));
            // A smaller size that fails is explained on the sheet; full size must hold.
            append(plan_.findings, journal_findings(full.back()));
            append(all, std::move(columns));
        }
        add("measurements", compose::measurements_sheet(context_, all));
        add("materials", compose::materials_sheet(context_, materials::count(kit_.manifest, *kit_.pipeline, full.front().measures, counts_.of_set)));
        add("print-check", compose::print_check_sheet(context_, {turned(), shown_percents()}));
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

void plan_sheets(const ReadKit& kit, const SheetCounts& counts, const checks::Rules& rules, const type::Fonts& fonts, Plan& plan) {
    rules.tried("no-journal-pages");
    if (counts.journal_sheets == 0) {
        rules.say(plan.findings, {"no-journal-pages", Level::error, "kit.yaml", 0, 0, "0 sheets", "1 sheet or more",
                                  "The kit has no journal pages, so there is no journal to measure.", "Add a set with 'role: journal-page'."});
        return;
    }
    for (const Paper& paper : kit.manifest.papers) SheetPlanner(kit, counts, fonts, paper, plan).plan_all();
}

}  // namespace qw::release
