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

std::string spaced_name(std::string name) {
    std::replace(name.begin(), name.end(), '-', ' ');
    return name;
}

std::vector<MeasureRow> rows_of(const Measures& m, const RowTitles& titles) {
    using Kind = MeasureRow::Kind;
    std::vector<MeasureRow> rows;
    rows.push_back({Kind::page, "page", "", titles.page, titles.page_use, page_text(m.conditions.page, UnitSystem::metric),
                    page_text(m.conditions.page, UnitSystem::us)});
    for (const journal::Piece& p : m.pieces)
        rows.push_back({Kind::piece, p.of->name, counted(p.count), p.of->title, p.of->use, real_fractions(p.text(UnitSystem::metric)),
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
    return rows;
}

}  // namespace qw::compose
