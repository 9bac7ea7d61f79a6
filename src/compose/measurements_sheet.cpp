// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/measurements_sheet.h"

#include "base/words.h"
#include "compose/cover_drawing.h"
#include "compose/piece_table.h"
#include "compose/size_table.h"

#include <algorithm>
#include <cstdio>

namespace qw::compose {

namespace {

RowTitles titles_from(const texts::Passages& words) {
    return {words.line("page"), words.line("page-use"), words.line("page-stations"), words.line("spine-stations"), words.line("stations-use")};
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

/// "Spine strip" → "spine strip", for the middle of a sentence.
std::string in_sentence(std::string title) {
    if (!title.empty() && title[0] >= 'A' && title[0] <= 'Z') title[0] = static_cast<char>(title[0] - 'A' + 'a');
    return title;
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
    const auto same = same_at_every_size(columns, words);
    model.truth("any-same", !same.empty()).text("same", listed(same, words.line("and")));
    model.list("own-size-sets", sets_of_own_size(context.manifest));
    return model;
}

void paragraphs(Sheet& sheet, const std::vector<std::string>& sentences) {
    for (const std::string& sentence : sentences)
        sheet.down(sheet.canvas().paragraph({sheet.content().left, sheet.top()}, sheet.content().width(), sentence, setting::small) + Length::mm(1.5));
}

}  // namespace

Document measurements_sheet(const SheetContext& context, const std::vector<SizeColumn>& columns) {
    const texts::Passages words = passages_of(context.pipeline, "measurements");
    const RowTitles titles = titles_from(words);
    const auto model = model_of(context, columns, words);
    Sheet sheet(context, words.line("title"), words.line("subtitle", model), PrintAt::full_size);

    const auto full = at_full_size(columns);
    draw_piece_table(sheet, full, titles, words, words.line("how-to", model));
    if (!full.empty()) {
        sheet.down(Length::mm(5));
        const Rect area = sheet.content();
        draw_cover(sheet.canvas(), {area.left, area.bottom, area.right, sheet.top()}, full.front().measures, passages_of(context.pipeline, "drawings"));
    }
    bool first = true;
    for (const Print print : context.manifest.prints) {
        const auto own = of_print(columns, print);
        if (own.empty()) continue;
        const std::string title = words.line("sizes-" + name_of(print));
        sheet.new_page(title);
        if (first) paragraphs(sheet, words.paragraphs("sizes-how-to", model));
        first = false;
        draw_size_table(sheet, own, titles, words, title);
    }
    return std::move(sheet).finish();
}

}  // namespace qw::compose
