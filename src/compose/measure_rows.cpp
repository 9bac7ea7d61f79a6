// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/measure_rows.h"

#include "compose/fractions.h"

#include <algorithm>
#include <tuple>

namespace qw::compose {

namespace {

using journal::Measures;
using journal::Shown;

Length in(const Shown& shown, UnitSystem system) { return system == UnitSystem::metric ? shown.metric : shown.us; }

std::string counted(int count) { return std::to_string(count) + " ×"; }

std::string page_text(Size page, UnitSystem system) {
    const Length step = system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16);
    return real_fractions(show(round_to_step(page.width, step, Rounding::nearest), round_to_step(page.height, step, Rounding::nearest), system));
}

MeasureRow stations_row(const std::string& name, const std::string& title, const std::string& use, const std::vector<Shown>& stations) {
    return {MeasureRow::Kind::stations, name, "", title, use, stations_text(stations, UnitSystem::metric),
            stations_text(stations, UnitSystem::us)};
}

void add_stations(const Measures& m, const RowTitles& titles, std::vector<MeasureRow>& rows) {
    // The template says once for both what is pierced; from where they are measured is said beside it.
    std::string use = m.journal->stations.use.empty() ? titles.stations_use : m.journal->stations.use;
    for (const auto& [name, title, stations] : {std::tuple("page-stations", &titles.page_stations, &m.page_stations),
                                                std::tuple("spine-stations", &titles.spine_stations, &m.spine_stations)}) {
        if (stations->empty()) continue;
        rows.push_back(stations_row(name, *title, use, *stations));
        use = titles.stations_use;
    }
}

std::string with_grain(const kit::PieceTemplate& piece, const RowTitles& titles) {
    if (piece.stock == "bought") return piece.use;
    const std::string& grain = piece.grain == "height" ? titles.grain_height : piece.grain == "width" ? titles.grain_width : std::string();
    return piece.use + (piece.use.empty() || grain.empty() ? "" : "; ") + grain;
}

/// Of the paper's thickness, which no ruler measures: finer than what is cut.
std::string fine(Length value, UnitSystem system) {
    return real_fractions(system == UnitSystem::metric ? show_metric(round_to_step(value, Length::mm(0.1), Rounding::nearest)) : show_us(value));
}

std::string interval(Length least, Length most, UnitSystem system, const std::string& to) {
    const std::string from = fine(least, system), until = fine(most, system);
    return from == until ? until : from.substr(0, from.rfind(' ')) + " " + to + " " + until;
}

void add_figures(const Measures& m, const RowTitles& titles, std::vector<MeasureRow>& rows) {
    using Kind = MeasureRow::Kind;
    bool bulk_told = m.bulk <= Length();
    for (const journal::ToldFigure& f : m.figures) {
        rows.push_back({Kind::figure, f.of->name, "", f.of->title, f.of->use, real_fractions(f.text(UnitSystem::metric)), real_fractions(f.text(UnitSystem::us))});
        bulk_told = bulk_told || (f.is_length && abs(f.length.exact - m.bulk) < Length::mm(0.001));
    }
    if (!bulk_told) rows.push_back({Kind::figure, "bulk", "", titles.bulk, titles.bulk_use, fine(m.bulk, UnitSystem::metric), fine(m.bulk, UnitSystem::us)});
    if (m.creep_most > Length())
        rows.push_back({Kind::figure, "creep", "", titles.creep, titles.creep_use, interval(m.creep_least, m.creep_most, UnitSystem::metric, titles.to),
                        interval(m.creep_least, m.creep_most, UnitSystem::us, titles.to)});
}

}  // namespace

std::string MeasureRow::figures(UnitSystem system) const { return in(system).substr(0, in(system).rfind(' ')); }

std::string stations_text(const std::vector<Shown>& stations, UnitSystem system) {
    std::string text;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        std::string one = show(in(stations[i], system), system);
        if (i + 1 < stations.size()) one.resize(one.rfind(' '));  // only the last carries the unit
        text += (i == 0 ? "" : " · ") + one;
    }
    return real_fractions(text);
}

std::string in_sentence(std::string title) {
    if (!title.empty() && title[0] >= 'A' && title[0] <= 'Z') title[0] = static_cast<char>(title[0] - 'A' + 'a');
    return title;
}

std::vector<MeasureRow> rows_of(const Measures& m, const RowTitles& titles) {
    using Kind = MeasureRow::Kind;
    std::vector<MeasureRow> rows;
    rows.push_back({Kind::page, "page", "", titles.page, titles.page_use, page_text(m.conditions.page, UnitSystem::metric),
                    page_text(m.conditions.page, UnitSystem::us)});
    for (const journal::Piece& p : m.pieces)
        rows.push_back({Kind::piece, p.of->name, counted(p.count), p.of->title, with_grain(*p.of, titles), real_fractions(p.text(UnitSystem::metric)),
                        real_fractions(p.text(UnitSystem::us))});
    add_stations(m, titles, rows);
    for (const journal::CutLength& l : m.lengths)
        rows.push_back({Kind::length, l.of->name, counted(l.count), l.of->title, l.of->use, real_fractions(show_metric(l.length.metric)),
                        real_fractions(show_us(l.length.us))});
    for (const journal::Item& i : m.items) {
        if (!i.of->size) continue;
        const auto shown = [&](UnitSystem system) { return real_fractions(show(i.of->size->in(system), system)); };
        rows.push_back({Kind::item, i.of->name, counted(i.count), i.of->title, i.of->use, shown(UnitSystem::metric), shown(UnitSystem::us)});
    }
    add_figures(m, titles, rows);
    return rows;
}

}  // namespace qw::compose
