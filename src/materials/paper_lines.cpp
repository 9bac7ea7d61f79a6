// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "journal/full_sheets.h"
#include "materials/amounts.h"
#include "materials/lines.h"

#include <algorithm>

namespace qw::materials {

namespace {

std::string sheets_text(int count) { return std::to_string(count) + (count == 1 ? " sheet" : " sheets"); }

int sheets_of_files(const kit::Set& set) {
    const int files = static_cast<int>(set.files.size());
    return set.sides == kit::Sides::duplex ? (files + 1) / 2 : files;
}

bool only_one(const kit::Manifest& manifest, kit::Role role) {
    return std::count_if(manifest.sets.begin(), manifest.sets.end(), [&](const kit::Set& s) { return s.role == role; }) == 1;
}

int sheets_of(const kit::Manifest& manifest, const kit::Set& set, const journal::Conditions& conditions, const SheetsOfSets& counted) {
    if (const auto found = counted.find(set.name); found != counted.end()) return found->second;
    if (only_one(manifest, set.role)) {
        if (set.role == kit::Role::journal_page) return conditions.sheets;
        if (set.role == kit::Role::full_sheet) return conditions.full_sheets;
    }
    return sheets_of_files(set);
}

/// "in 2 signatures of 6": as it is sewn; a journal that is not sewn has none.
std::string signatures_text(const journal::Measures& measures, int sheets) {
    if (!measures.sewing || measures.sewing->signatures < 1) return {};
    const int signatures = measures.sewing->signatures, most = (sheets + signatures - 1) / signatures;
    if (signatures == 1) return "in one signature";
    return "in " + std::to_string(signatures) + " signatures of " + (sheets % signatures ? "up to " : "") + std::to_string(most);
}

/// "5 for full sheets; full sheets needed: 3 (kit has 5)"
std::string use_of_full_sheets(int sheets, const std::optional<journal::FullSheets>& needed) {
    const std::string text = std::to_string(sheets) + " for full sheets";
    if (!needed) return text;
    const std::string again = journal::print_again(*needed);
    return text + ", full sheets needed: " + std::to_string(needed->needed) + " (kit has " + std::to_string(needed->in_kit) + ")" +
           (again.empty() ? "" : ", so " + again);
}

std::string use_text(const kit::Set& set, int sheets, const journal::Measures& measures) {
    if (set.role == kit::Role::part) {
        return std::to_string(sheets) + " for " + spaced_name(set.name) + (set.sides == kit::Sides::duplex ? ", printed on both sides" : "");
    }
    if (set.role != kit::Role::journal_page) return std::to_string(sheets) + " for extras";
    std::string text = std::to_string(sheets) + " for journal pages";
    if (set.sides == kit::Sides::duplex) text += ", printed on both sides";
    const std::string signatures = sheets == measures.conditions.sheets ? signatures_text(measures, sheets) : std::string();
    return signatures.empty() ? text : text + ", " + signatures;
}

/// Sheets of one stock, and what they are for.
struct Pile {
    const kit::Stock* stock = nullptr;
    int sheets = 0;
    std::string use;
};

void add(std::vector<Pile>& piles, const kit::Stock& stock, int sheets, const std::string& use) {
    auto pile = std::find_if(piles.begin(), piles.end(), [&](const Pile& p) { return p.stock == &stock; });
    if (pile == piles.end()) pile = piles.insert(piles.end(), {&stock, 0, {}});
    pile->sheets += sheets;
    pile->use += (pile->use.empty() ? "" : "; ") + use;
}

}  // namespace

std::vector<Line> paper_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                              const SheetsOfSets& counted) {
    std::vector<Pile> piles;
    // Told once for all sets of full sheets, beside the first; what is printed again adds to its paper.
    std::optional<journal::FullSheets> needed = journal::full_sheets(measures);
    for (const kit::Set& set : manifest.sets) {
        if (set.role == kit::Role::part && !counted.count(set.name)) continue;
        const kit::Stock* stock = pipeline.stock(*set.stock);
        if (!stock) throw Fault(FaultKind::not_understood, FaultNote{"unknown-stock", set.stock.mark, "there is no stock '" + *set.stock + "'", {}, {}});
        const int sheets = sheets_of(manifest, set, measures.conditions, counted);
        if (sheets == 0) continue;
        if (set.role != kit::Role::full_sheet) {
            add(piles, *stock, sheets, use_text(set, sheets, measures));
            continue;
        }
        const int again = needed ? std::max(0, needed->needed - needed->in_kit) : 0;
        add(piles, *stock, sheets + again, use_of_full_sheets(sheets + again, needed));
        needed.reset();
    }
    std::vector<Line> lines;
    for (const Pile& pile : piles) {
        const std::string amount = sheets_text(pile.sheets) + " " + measures.conditions.paper.title + ", " + weight_text(*pile.stock, pipeline);
        lines.push_back({Line::Group::paper, pile.stock->name, pile.stock->title, amount, amount, pile.use, false, {}});
    }
    return lines;
}

}  // namespace qw::materials
