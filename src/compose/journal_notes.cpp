// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/journal_notes.h"

#include "compose/fractions.h"
#include "compose/named_figure.h"
#include "compose/ruled_table.h"

#include <algorithm>
#include <cstdio>

namespace qw::compose {

namespace {

std::string both(const kit::BothLengths& value, UnitSystem first) {
    const UnitSystem second = first == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
    return real_fractions(show(value.in(first), first) + ", " + show(value.in(second), second));
}

std::string plain(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%g", value);
    return text;
}

bool named_in_a_step(const kit::JournalTemplate& journal, const std::string& name) {
    return std::any_of(journal.steps.begin(), journal.steps.end(),
                       [&](const kit::StepTemplate& step) { return step.text.find("{{" + name + "}}") != std::string::npos; });
}

/// As many columns of one width as keep the longest words whole, but no more than there are cells.
std::size_t columns_for(const Sheet& sheet, Length widest, Length gap, std::size_t cells) {
    const double fit = (sheet.content().width() + gap) / (widest + gap);
    return std::max<std::size_t>(1, std::min(cells, static_cast<std::size_t>(fit)));
}

}  // namespace

std::vector<const kit::NamedLength*> setting_out(const kit::JournalTemplate& journal) {
    std::vector<const kit::NamedLength*> lengths;
    for (const kit::NamedLength& length : journal.lengths)
        if (!length.printed && named_in_a_step(journal, length.name)) lengths.push_back(&length);
    return lengths;
}

void draw_setting_out(Sheet& sheet, const journal::Measures& measures, const texts::Passages& words) {
    const auto lengths = setting_out(*measures.journal);
    if (lengths.empty()) return;
    const UnitSystem own = measures.ruler, other = own == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
    const texts::Passages names = passages_of(sheet.context().pipeline, "names");
    const Length gap = Length::mm(5);
    Length widest = Length::mm(26);
    for (const kit::NamedLength* length : lengths) widest = max(widest, sheet.canvas().width(setting::small_strong, title_of_name(length->name, names)));
    const std::size_t columns = columns_for(sheet, widest, gap, lengths.size());
    RuledTable table(sheet, std::vector<Length>(columns, (sheet.content().width() + gap) / static_cast<double>(columns) - gap), gap);
    table.introduce(words.line("setting-out-heading"), {});
    for (std::size_t from = 0; from < lengths.size(); from += columns) {
        std::vector<TableCell> cells;
        for (std::size_t i = from; i < std::min(lengths.size(), from + columns); ++i)
            cells.push_back(TableCell(title_of_name(lengths[i]->name, names), setting::small_strong)
                                .add(real_fractions(show(lengths[i]->value.in(own), own)), setting::table_figure)
                                .add(real_fractions(show(lengths[i]->value.in(other), other)), setting::other));
        table.row(cells);
    }
    table.draw(words.line("setting-out-heading"));
}

namespace {

struct Departure {
    std::string name, value, why, published;
};

std::vector<Departure> departures_of(const journal::Measures& measures, const texts::Passages& words) {
    std::vector<Departure> all;
    for (const kit::NamedLength& length : measures.journal->lengths) {
        if (length.published.empty()) continue;
        const std::string value = both(length.value, measures.ruler);
        all.push_back({length.name, length.printed ? words.line("otherwise-printed", texts::Model().text("value", value)) : value, length.why, length.published});
    }
    for (const kit::NamedNumber& number : measures.journal->numbers)
        if (!number.published.empty()) all.push_back({number.name, plain(number.value), number.why, number.published});
    return all;
}

}  // namespace

void draw_departures(Sheet& sheet, const journal::Measures& measures, const texts::Passages& words) {
    const Length all = sheet.content().width(), gap = Length::mm(5), first = Length::mm(46);
    const bool narrow = all < first * 3;  // what stands beside each other on a wide sheet stands below each other
    RuledTable table(sheet, narrow ? std::vector<Length>{all} : std::vector<Length>{first, (all - first - gap * 2) / 2, (all - first - gap * 2) / 2}, gap);
    const texts::Passages names = passages_of(sheet.context().pipeline, "names");
    const std::string heading = words.line("otherwise-heading"), why = words.line("otherwise-why-head"), published = words.line("otherwise-published-head");
    table.introduce(heading, words.paragraphs("otherwise"));
    table.airy(Length::mm(1.2), Length::mm(1.2));
    if (!narrow) table.head({{words.line("otherwise-value-head"), setting::small_strong}, {why, setting::small_strong}, {published, setting::small_strong}});
    for (const Departure& d : departures_of(measures, words)) {
        const TableCell name = TableCell(title_of_name(d.name, names), setting::label).add(d.value, setting::body);
        if (narrow) {
            table.row({name}, weight::line);
            table.row({TableCell(why, setting::small_strong).add(real_fractions(d.why), setting::small)});
            table.row({TableCell(published, setting::small_strong).add(real_fractions(d.published), setting::small)});
        } else {
            table.row({name, {real_fractions(d.why), setting::small}, {real_fractions(d.published), setting::small}});
        }
    }
    table.draw(heading);
}

}  // namespace qw::compose
