// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"
#include "compose/measurements_sheet.h"

#include "base/words.h"
#include "compose/cover_drawing.h"
#include "compose/fractions.h"
#include "compose/journal_notes.h"
#include "compose/own_page_table.h"
#include "compose/piece_table.h"
#include "compose/print_readings.h"
#include "compose/reading_table.h"
#include "compose/size_table.h"

#include <algorithm>
#include <cstdio>

namespace qw::compose {

namespace {

/// Of the content's height: what the drawing of the cover needs to be large.
constexpr double part_for_cover = 0.4;

RowTitles titles_from(const texts::Passages& words) {
    return {words.line("page"),         words.line("page-use"),     words.line("page-stations"), words.line("spine-stations"),
            words.line("stations-use"), words.line("grain-height"), words.line("grain-width"),   words.line("bulk"),
            words.line("bulk-use"),     words.line("creep"),        words.line("creep-use"),     words.line("to")};
}

std::vector<SizeColumn> of_print(const std::vector<SizeColumn>& columns, Print print) {
    std::vector<SizeColumn> own;
    std::copy_if(columns.begin(), columns.end(), std::back_inserter(own), [&](const SizeColumn& c) { return c.print == print; });
    return own;
}

std::vector<SizeColumn> at_full_size(const std::vector<SizeColumn>& columns) {
    std::vector<SizeColumn> full;
    std::copy_if(columns.begin(), columns.end(), std::back_inserter(full), [](const SizeColumn& c) { return c.percent == 100; });
    return full;
}

/// What has one measure at every size that is shown: found by looking, so that no template has to promise it.
std::vector<std::string> same_at_every_size(const std::vector<SizeColumn>& columns, const texts::Passages& words) {
    std::vector<std::string> same;
    const journal::Measures& first = columns.front().measures;
    const auto constant = [&](const std::string& name, const auto& side) {
        return std::all_of(columns.begin(), columns.end(), [&](const SizeColumn& c) {
            const journal::Piece* piece = c.measures.piece(name);
            return piece && side(*piece).rounded == side(*first.piece(name)).rounded;
        });
    };
    for (const journal::Piece& piece : first.pieces) {
        const bool width = constant(piece.of->name, [](const journal::Piece& p) { return p.width; });
        const bool height = constant(piece.of->name, [](const journal::Piece& p) { return p.height; });
        const auto model = texts::Model().text("piece", in_sentence(piece.of->title));
        if (width || height) same.push_back(words.line(width && height ? "whole-piece" : width ? "width-of" : "height-of", model));
    }
    return same;
}

/// Sets that keep their own size when the pages shrink.
std::vector<texts::Model> sets_of_own_size(const kit::Manifest& manifest) {
    std::vector<texts::Model> sets;
    for (const kit::Set& set : manifest.sets) {
        if (!set.print_at) continue;
        char percent[16];
        std::snprintf(percent, sizeof percent, "%g %%", *set.print_at * 100);
        sets.push_back(texts::Model().text("set", spaced_name(set.name)).text("percent", percent));
    }
    return sets;
}

texts::Model model_of(const SheetContext& context, const std::vector<SizeColumn>& columns, const texts::Passages& words) {
    texts::Model model;
    const journal::Measures& m = columns.front().measures;
    const bool metric = m.ruler == UnitSystem::metric;
    model.text("journal", m.journal->title).text("paper", context.paper.title).text("kit", context.manifest.title);
    model.text("own-ruler", words.line(metric ? "metric" : "us")).text("other-ruler", words.line(metric ? "us" : "metric"));
    model.text("gauge", real_fractions(show(gauge_length(context.paper), m.ruler)));
    const auto same = same_at_every_size(columns, words);
    model.truth("any-same", !same.empty()).text("same", listed(same, words.line("and")));
    model.list("own-size-sets", sets_of_own_size(context.manifest));
    return model;
}

/// The first full size that can be made; nothing to draw without one, or when the template has no picture of its cover.
void opened_cover(Sheet& sheet, const std::vector<SizeColumn>& full, const texts::Passages& words, const std::string& page_title) {
    const auto made = std::find_if(full.begin(), full.end(), [](const SizeColumn& c) { return !has_errors(c.measures.findings); });
    if (made == full.end() || made->measures.journal->picture == "none") return;
    if (sheet.left_over() < sheet.content().height() * part_for_cover) sheet.new_page(page_title);
    else sheet.down(Length::mm(7));
    sheet.heading(words.line("cover-heading", texts::Model().text("print", in_sentence(words.line(name_of(made->print)))).text("size", made->label)));
    sheet.down(Length::mm(3));
    const Rect area = sheet.content();
    draw_cover(sheet.canvas(), {area.left, area.bottom, area.right, sheet.top()}, made->measures, passages_of(sheet.context().pipeline, "drawings"));
}

/// Pieces whose grain, along the longer side of a full sheet, turns a picture that is printed across the sheet.
std::vector<std::string> turned_pictures(const journal::Measures& measures) {
    std::vector<std::string> titles;
    for (const journal::Piece& piece : measures.pieces)
        if (piece.of->stock == "cover" && piece.of->grain == "height" && measures.conditions.full_sheets > 0) titles.push_back(in_sentence(piece.of->title));
    return titles;
}

/// What is cut, what it is set out by, what else there is to know, and the cover, all at full size.
void full_size(Sheet& sheet, const std::vector<SizeColumn>& full, const std::vector<std::string>& how_to, const RowTitles& titles, const texts::Passages& words) {
    if (full.empty()) return;
    const std::string title = words.line("title"), further = words.line("whole-title");
    draw_piece_table(sheet, full, PieceRows::to_make, "", how_to, titles, words, title);
    draw_reasons(sheet, full, words, title);
    sheet.down(Length::mm(5));
    draw_setting_out(sheet, full.front().measures, words);
    sheet.down(Length::mm(5));
    draw_piece_table(sheet, full, PieceRows::to_know, words.line("know-heading"), {}, titles, words, further);
    note_below(sheet, words.line("grain-of-pages"), further);
    if (const auto turned = turned_pictures(full.front().measures); !turned.empty())
        note_below(sheet, words.line("grain-of-covers", texts::Model().text("pieces", listed(turned, words.line("and")))), further);
    opened_cover(sheet, full, words, further);
}

/// How a size is found, in a table of its own or, where the rows of sizes tell it, in words; and what may have happened.
void how_to_measure(Sheet& sheet, const std::vector<SizeColumn>& shown, const texts::Model& model, const texts::Passages& words) {
    const std::string title = words.line("measure-title");
    const bool in_rows = rows_tell_the_line(sheet.context().paper);
    std::vector<std::string> how_to = words.paragraphs(in_rows ? "measure-how-to-small" : "measure-how-to", model);
    for (const std::string& sentence : words.paragraphs("measure-not-scaled", model)) how_to.push_back(sentence);
    sheet.new_page(title);
    if (in_rows) {
        for (const std::string& sentence : how_to)
            sheet.down(sheet.canvas().paragraph({sheet.content().left, sheet.top()}, sheet.content().width(), sentence, setting::small) + Length::mm(1.2));
        sheet.down(Length::mm(4));
    } else {
        draw_reading_table(sheet, shown, how_to, words, title);
        sheet.new_page(title);
    }
    draw_cause_table(sheet, words, title);
}

}  // namespace

Document measurements_sheet(const SheetContext& context, const std::vector<SizeColumn>& columns) {
    const texts::Passages words = passages_of(context.pipeline, "measurements");
    const RowTitles titles = titles_from(words);
    const auto model = model_of(context, columns, words);
    Sheet sheet(context, words.line("title"), words.line("subtitle", model), PrintAt::full_size);

    const auto full = at_full_size(columns);
    full_size(sheet, full, words.paragraphs("how-to", model), titles, words);

    const auto shown = told_apart(columns, context.paper);
    how_to_measure(sheet, shown, model, words);
    for (const Print print : context.manifest.prints) {
        const auto own = of_print(shown, print);
        if (own.empty()) continue;
        draw_size_table(sheet, own, titles, words);
    }
    draw_own_page_tables(sheet, columns, words);
    sheet.down(Length::mm(6));
    draw_departures(sheet, columns.front().measures, words);
    return std::move(sheet).finish();
}

}  // namespace qw::compose
