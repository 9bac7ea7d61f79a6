// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/kit_sizes.h"

#include "base/fault.h"
#include "base/words.h"
#include "kit/stock_of.h"

#include <algorithm>

namespace qw::release {

namespace {

const kit::Set* first_of(const kit::Manifest& manifest, kit::Role role) {
    const auto found = std::find_if(manifest.sets.begin(), manifest.sets.end(), [&](const kit::Set& set) { return set.role == role; });
    return found == manifest.sets.end() ? nullptr : &*found;
}

/// A sheet as it lies on the table when it is printed and cut: the picture alone, or the whole paper, which shrinks
/// with the buyer's percentage but not with the printer's margins. A driver that enlarges prints no larger paper.
Size trimmed(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition, double percent) {
    const Size sheet = edition.paper.size.as_landscape();
    if (manifest.borders == kit::Borders::kept) return sheet * std::min(1.0, set.print_at.value_or(percent / 100));
    return sheet * std::min(1.0, scale_of(set, edition, true, percent));
}

/// How thick one of a set is when it is filled: what the kit says, what a part's layers and contents come to, or a sheet.
Length filled(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const SheetCounts& counts, const kit::Set& set) {
    if (set.filled) return *set.filled;
    if (const auto folded = counts.filled.find(set.name); folded != counts.filled.end()) return folded->second;
    return kit::stock_of(manifest, pipeline, *set.stock).caliper;
}

/// All that the kit says is glued into the journal.
Length glued_in(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const SheetCounts& counts) {
    Length total;
    for (const kit::Set& set : manifest.sets)
        if (set.glued_in > 0) total += filled(manifest, pipeline, counts, set) * set.glued_in;
    return total;
}

}  // namespace

void SheetCounts::add(const kit::Set& set, int faces) {
    const int sheets = set.sides == kit::Sides::duplex ? (faces + 1) / 2 : faces;
    of_set[set.name] = sheets;
    if (set.role == kit::Role::journal_page) journal_sheets += sheets;
    if (set.role == kit::Role::full_sheet) full_sheets += sheets;
}

void SheetCounts::add_parts(const kit::Set& set, const std::map<std::string, std::size_t>& of_faces) {
    std::size_t most = 0;
    for (const auto& [face, pictures] : of_faces) most = std::max(most, pictures);
    parts[set.name] = static_cast<int>(most) * set.copies;
}

Edition edition_of(const kit::Printer& printer, const Paper& paper, Print print, kit::Sides sides) {
    Edition edition{paper, print, {}};
    if (print == Print::bordered) edition.margins = sides == kit::Sides::duplex ? printer.duplex : printer.single;
    return edition;
}

double scale_of(const kit::Set& set, const Edition& edition, bool landscape, double percent) {
    return fit_of(edition, landscape).scale * set.print_at.value_or(percent / 100);
}

journal::Conditions conditions_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const kit::Printer& printer,
                                  const SheetCounts& counts, const Paper& paper, Print print, double percent) {
    journal::Conditions c;
    c.paper = paper;
    c.print = print;
    c.sheets = counts.journal_sheets;
    c.full_sheets = counts.full_sheets;
    c.board_stock = kit::stock_of(manifest, pipeline, *manifest.board_stock);
    c.spine_stock = kit::stock_of(manifest, pipeline, *manifest.spine_stock);
    c.glued_in = glued_in(manifest, pipeline, counts);
    const kit::Set* pages = first_of(manifest, kit::Role::journal_page);
    const Edition edition = edition_of(printer, paper, print, pages ? pages->sides : kit::Sides::single);
    const kit::Set plain;
    const kit::Set& of_pages = pages ? *pages : plain;
    c.scale = scale_of(of_pages, edition, true, percent);
    const Size sheet = trimmed(manifest, of_pages, edition, percent);
    c.page = {sheet.width / 2, sheet.height};
    if (pages) c.page_stock = kit::stock_of(manifest, pipeline, *pages->stock);
    c.cover_stock = c.page_stock;
    if (const kit::Set* covers = first_of(manifest, kit::Role::full_sheet)) {
        c.cover_sheet = trimmed(manifest, *covers, edition_of(printer, paper, print, covers->sides), percent).as_portrait();
        c.cover_stock = kit::stock_of(manifest, pipeline, *covers->stock);
    }
    return c;
}

const kit::Printer& printer_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const std::optional<std::string>& ordered) {
    const std::string& name = ordered ? *ordered : *manifest.printer;
    if (const kit::Printer* printer = pipeline.printer(name)) return *printer;
    std::vector<std::string> names;
    for (const kit::Printer& printer : pipeline.printers) names.push_back(printer.name);
    const auto near = nearest_word(name, names);
    throw Fault(FaultKind::not_understood, {"unknown-printer", {ordered ? "--printer" : "kit.yaml", 0, 0}, "there is no printer '" + name + "'",
                                            listed(names), near ? "did you mean '" + *near + "'?" : ""});
}

}  // namespace qw::release
