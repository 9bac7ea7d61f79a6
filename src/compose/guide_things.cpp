// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_things.h"

#include "base/fault.h"
#include "base/words.h"
#include "compose/fractions.h"
#include "compose/guide_needs.h"
#include "materials/amounts.h"
#include "materials/heap.h"

#include <algorithm>

namespace qw::compose {

namespace {

constexpr const char* not_shown = "–";

RowTitles guide_row_titles(const texts::Passages& measurements) {
    return {measurements.line("page"), measurements.line("page-use"), measurements.line("page-stations"), measurements.line("spine-stations"), {}};
}

/// One size when all prints agree. Each keeps its print's name otherwise.
std::vector<GuideSize> agreed(std::vector<GuideSize> sizes) {
    const bool same = std::all_of(sizes.begin(), sizes.end(), [&](const GuideSize& s) { return s.own == sizes[0].own && s.other == sizes[0].other; });
    if (!same || sizes.empty()) return sizes;
    sizes.resize(1);
    sizes[0].print.clear();
    return sizes;
}

/// A dot between two distances stays with the first of them at the end of a line.
void keep_dots(std::string& stations) {
    for (std::size_t at = stations.find(" ·"); at != std::string::npos; at = stations.find(" ·", at + 1)) stations.replace(at, 1, "\u00a0");
}

const MeasureRow* row_named(const std::vector<MeasureRow>& rows, const std::string& name) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const MeasureRow& row) { return row.name == name; });
    return found == rows.end() ? nullptr : &*found;
}

/// Whether a step may name it, whatever this size has of it.
bool template_has(const kit::JournalTemplate& journal, const std::string& name) {
    const auto among = [&](const auto& things) { return std::any_of(things.begin(), things.end(), [&](const auto& thing) { return thing.name == name; }); };
    return name == "page" || name == "page-stations" || name == "spine-stations" || among(journal.pieces) || among(journal.cut_lengths) ||
           among(journal.items) || among(journal.figures) || std::find(journal.replaced.begin(), journal.replaced.end(), name) != journal.replaced.end();
}

}  // namespace

GuideThings::GuideThings(const SheetContext& context, const std::vector<SizeColumn>& full, const texts::Passages& words)
    : context_(context), full_(full), words_(words) {
    const RowTitles titles = guide_row_titles(passages_of(context.pipeline, "measurements"));
    for (const SizeColumn& column : full) rows_.push_back(rows_of(column.measures, titles));
}

const SizeColumn& GuideThings::first_shown() const {
    const auto shown = std::find_if(full_.begin(), full_.end(), [](const SizeColumn& c) { return !has_errors(c.measures.findings); });
    return shown == full_.end() ? full_.front() : *shown;
}

std::vector<GuideThing> GuideThings::used(const std::string& name, const kit::StepTemplate& step) const {
    const journal::Measures& m = first_shown().measures;
    const SourceMark mark{m.journal->file, step.mark.line, step.mark.column};
    if (!template_has(*m.journal, name))
        throw Fault(FaultKind::not_understood, FaultNote{"unknown-name", mark, "the step uses '" + name + "', which the journal does not have",
                                                         "a piece, cut length, item, figure, page, page-stations or spine-stations", "remove it from 'uses'"});
    if (const journal::ToldFigure* figure = m.figure(name)) return {told(*figure)};
    const auto& rows = rows_[static_cast<std::size_t>(&first_shown() - full_.data())];
    const MeasureRow* row = row_named(rows, name);
    GuideThing thing = row ? measured(*row) : GuideThing{};
    if (const journal::Piece* piece = m.piece(name)) thing.remarks = remarks(*piece->of, piece->of->grain, piece->of->stock == "bought", step);
    if (const journal::CutLength* length = m.length(name)) thing.remarks = remarks(*length->of, "", true, step);
    for (const journal::Item& item : m.items) {
        if (item.of->name != name) continue;
        thing.title = item.of->title;
        // A pot of glue is not counted.
        if (item.of->size || item.count > 1) thing.count = std::to_string(item.count) + " ×";
        thing.remarks = remarks(*item.of, "", true, step);
    }
    if (thing.title.empty()) return {};
    if (row && row->kind == MeasureRow::Kind::stations) thing.remarks = {words_.line("from-head")};
    return {thing};
}

GuideThing GuideThings::measured(const MeasureRow& row) const { return {row.count, row.title, sizes(row.name), {}}; }

GuideThing GuideThings::told(const journal::ToldFigure& figure) const {
    GuideThing thing{"", figure.of->title, of_figure(figure.of->name), {}};
    if (!figure.of->use.empty()) thing.remarks.push_back(real_fractions(figure.of->use));
    return thing;
}

GuideSize GuideThings::size_of(const SizeColumn& column, const std::string& metric, const std::string& us) const {
    const std::string print = words_.line(name_of(column.print));
    if (has_errors(column.measures.findings)) return {print, not_shown, ""};
    const bool own_is_metric = column.measures.ruler == UnitSystem::metric;
    return {print, own_is_metric ? metric : us, metric == us ? std::string() : own_is_metric ? us : metric};
}

std::vector<GuideSize> GuideThings::sizes(const std::string& row_name) const {
    std::vector<GuideSize> all;
    for (std::size_t i = 0; i < full_.size(); ++i) {
        const MeasureRow* row = row_named(rows_[i], row_name);
        if (row) all.push_back(size_of(full_[i], row->metric, row->us));
        else all.push_back({words_.line(name_of(full_[i].print)), not_shown, ""});
        keep_dots(all.back().own);
        keep_dots(all.back().other);
    }
    return agreed(all);
}

std::vector<GuideSize> GuideThings::of_figure(const std::string& name) const {
    std::vector<GuideSize> all;
    for (const SizeColumn& column : full_) {
        const journal::ToldFigure* figure = column.measures.figure(name);
        const auto shown = [&](UnitSystem system) { return figure ? real_fractions(figure->text(system)) : std::string(not_shown); };
        all.push_back(size_of(column, shown(UnitSystem::metric), shown(UnitSystem::us)));
    }
    return agreed(all);
}

std::vector<std::string> GuideThings::remarks(const kit::Choosable& thing, const std::string& grain, bool bought, const kit::StepTemplate& step) const {
    std::vector<std::string> all;
    // Tape and ribbon have a grain that nobody can choose.
    if (!grain.empty() && !(bought && grain == "any")) all.push_back(words_.line("grain-" + grain));
    if (thing.optional) all.push_back(words_.line("optional"));
    for (const kit::Alternative& other : thing.instead) all.push_back(way(other, step));
    return all;
}

std::string GuideThings::way(const kit::Alternative& other, const kit::StepTemplate& step) const {
    std::string title = other.title;
    const kit::Material* material = materials::material_of(context_.pipeline, other.material);
    if (title.empty() && material) title = material->title;
    std::vector<std::string> tools;
    for (const std::string& tool : other.tools) tools.push_back(materials::inside_sentence(guide_tool(context_, tool, step.mark).title));
    return words_.line("or", texts::Model().text("way", materials::inside_sentence(title)).truth("with-tools", !tools.empty())
                                 .text("tools", listed(tools, words_.line("and"))).truth("with-use", !other.use.empty()).text("use", real_fractions(other.use)));
}

std::vector<GuideThing> GuideThings::facts() const {
    std::vector<GuideThing> all;
    if (first_shown().measures.journal->picture != "none") all.push_back(cover());
    all.push_back({"", words_.line("book-page"), sizes("page"), {}});
    if (first_shown().measures.conditions.sheets > 0) all.push_back(sheets());
    return all;
}

/// Boards that are covers, or the one piece that goes round; the page where the template has neither.
GuideThing GuideThings::cover() const {
    const journal::Measures& m = first_shown().measures;
    const bool flat = m.journal->picture == "wrapped-cover" || m.journal->picture == "soft-cover";
    const journal::Piece* largest = nullptr;
    const auto area = [](const journal::Piece& p) { return p.width.exact.in_mm() * p.height.exact.in_mm(); };
    for (const journal::Piece& piece : m.pieces) {
        const bool candidate = flat ? piece.of->stock != "board" && piece.of->stock != "page" : piece.of->stock == "board";
        if (candidate && (!largest || area(piece) > area(*largest))) largest = &piece;
    }
    return {"", words_.line(flat ? "flat-cover" : "front-cover"), sizes(largest ? largest->of->name : "page"), {}};
}

GuideThing GuideThings::sheets() const {
    const journal::Measures& m = first_shown().measures;
    const int count = m.conditions.sheets;
    GuideThing thing{"", words_.line("pages"), {}, {}};
    thing.sizes.push_back({"", words_.line("sheets", texts::Model().text("sheets", std::to_string(count)).truth("several-sheets", count != 1)), ""});
    if (!m.sewing || m.sewing->signatures < 1 || m.sewing->of->from_the_side()) return thing;  // single leaves make no signatures
    const auto groups = signature_groups(count, m.sewing->signatures);
    std::vector<std::string> told;
    for (const auto& [signatures, each] : groups)
        told.push_back(words_.line("group", texts::Model().text("count", std::to_string(signatures)).text("each", std::to_string(each))));
    thing.remarks.push_back(words_.line("signatures", texts::Model().text("signatures", std::to_string(m.sewing->signatures))
                                                          .truth("several", m.sewing->signatures != 1).truth("even", groups.size() == 1)
                                                          .text("each", std::to_string(groups.front().second)).text("groups", listed(told, words_.line("and")))));
    return thing;
}

std::vector<std::pair<int, int>> signature_groups(int sheets, int signatures) {
    const int each = sheets / signatures, fuller = sheets % signatures;
    std::vector<std::pair<int, int>> groups;
    if (fuller > 0) groups.emplace_back(fuller, each + 1);
    if (each > 0 || fuller == 0) groups.emplace_back(signatures - fuller, each);
    return groups;
}

}  // namespace qw::compose
