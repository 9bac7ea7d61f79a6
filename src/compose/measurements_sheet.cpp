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

/// Names of the template's lengths that shrink with the pages, or that do not, as a list in words.
std::string lengths_that(const journal::Measures& m, bool shrink, const std::string& last) {
    std::vector<std::string> names;
    for (const kit::NamedLength& length : m.journal->lengths)
        if (length.printed == shrink) names.push_back(spaced_name(length.name));
    return listed(names, last);
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

texts::Model model_of(const SheetContext& context, const journal::Measures& m, const texts::Passages& words) {
    texts::Model model;
    const bool metric = m.ruler == UnitSystem::metric;
    model.text("journal", m.journal->title).text("paper", context.paper.title).text("kit", context.manifest.title);
    model.text("own-ruler", words.line(metric ? "metric" : "us")).text("other-ruler", words.line(metric ? "us" : "metric"));
    const std::string shrinking = lengths_that(m, true, words.line("and")), staying = lengths_that(m, false, words.line("and"));
    model.truth("any-shrink", !shrinking.empty()).truth("any-stay", !staying.empty());
    model.text("shrinking", shrinking).text("staying", staying);
    model.list("own-size-sets", sets_of_own_size(context.manifest));
    return model;
}

void paragraphs(Sheet& sheet, const std::vector<std::string>& sentences, Length width) {
    for (const std::string& sentence : sentences)
        sheet.down(sheet.canvas().paragraph({sheet.content().left, sheet.top()}, width, sentence, setting::body) + Length::mm(1.5));
}

}  // namespace

Document measurements_sheet(const SheetContext& context, const std::vector<SizeColumn>& columns) {
    const texts::Passages words = passages_of(context.pipeline, "measurements");
    const RowTitles titles = titles_from(words);
    const auto model = model_of(context, columns.front().measures, words);
    Sheet sheet(context, words.line("title"), words.line("subtitle", model), PrintAt::full_size);

    const Length measure = Length::mm(150);
    paragraphs(sheet, words.paragraphs("how-to", model), measure);
    const auto full = at_full_size(columns);
    draw_piece_table(sheet, full, titles, words);
    if (!full.empty()) {
        sheet.down(Length::mm(5));
        const Rect area = sheet.content();
        draw_cover(sheet.canvas(), {area.left, area.bottom, area.right, sheet.top()}, full.front().measures, words);
    }
    bool first = true;
    for (const Print print : context.manifest.prints) {
        const auto own = of_print(columns, print);
        if (own.empty()) continue;
        const std::string title = words.line("sizes-" + name_of(print));
        sheet.new_page(title);
        if (first) paragraphs(sheet, words.paragraphs("sizes-how-to", model), measure);
        first = false;
        draw_size_table(sheet, own, titles, words, title);
    }
    return std::move(sheet).finish();
}

}  // namespace qw::compose
