// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/measures.h"

#include "journal/formulas.h"
#include "journal/held.h"

#include <algorithm>

namespace qw::journal {

namespace {

/// The template evaluated with the lengths of either system, on the same printed page.
struct Both {
    Figures metric, us;
    UnitSystem ruler = UnitSystem::metric;
    const Figures& own() const { return ruler == UnitSystem::metric ? metric : us; }
};

Shown shown(const Both& figures, const kit::Formula& formula, const kit::RoundingRule& rule) {
    Shown s;
    s.exact = figures.own().length(formula);
    s.metric = round_to_step(figures.metric.length(formula), rule.step.metric, rule.way);
    s.us = round_to_step(figures.us.length(formula), rule.step.us, rule.way);
    s.rounded = figures.ruler == UnitSystem::metric ? s.metric : s.us;
    return s;
}

/// A hole has no side on which it may safely be wrong: the nearest mark of the ruler.
std::vector<Shown> stations(const Both& figures, const std::vector<kit::Formula>& formulas) {
    kit::RoundingRule rule;
    rule.way = Rounding::nearest;
    std::vector<Shown> all;
    for (const kit::Formula& formula : formulas) all.push_back(shown(figures, formula, rule));
    return all;
}

void add_counted(Measures& m, const Both& figures) {
    const kit::JournalTemplate& journal = *m.journal;
    for (const kit::PieceTemplate& piece : journal.pieces)
        if (const int count = figures.own().count(piece.count))
            m.pieces.push_back({&piece, count, shown(figures, piece.width, piece.rounding), shown(figures, piece.height, piece.rounding)});
    for (const kit::LengthTemplate& length : journal.cut_lengths)
        if (const int count = figures.own().count(length.count))
            m.lengths.push_back({&length, count, shown(figures, length.length, length.rounding)});
    for (const kit::ItemTemplate& item : journal.items)
        if (const int count = figures.own().count(item.count)) m.items.push_back({&item, count});
}

/// Before rounding in the paper's own unit system, after rounding in both.
std::vector<Reading> readings(Formulas& formulas, const Both& figures, const Conditions& conditions) {
    const UnitSystem own = figures.ruler;
    const UnitSystem other = own == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
    const Figures& beside = other == UnitSystem::metric ? figures.metric : figures.us;
    return {{figures.own(), own, false, true},
            {formulas.rounded(own, conditions, figures.own()), own, true, true},
            {formulas.rounded(other, conditions, beside), other, true, false}};
}

}  // namespace

std::string Piece::text(UnitSystem system) const {
    return system == UnitSystem::metric ? show(width.metric, height.metric, system) : show(width.us, height.us, system);
}

const Piece* Measures::piece(const std::string& name) const {
    const auto found = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& p) { return p.of->name == name; });
    return found == pieces.end() ? nullptr : &*found;
}

Measures compute(const kit::JournalTemplate& journal, const Conditions& conditions) {
    Formulas formulas(journal);
    Both figures;
    figures.ruler = conditions.paper.ruler;
    figures.metric = formulas.in(UnitSystem::metric, conditions);
    figures.us = formulas.in(UnitSystem::us, conditions);

    Measures m;
    m.journal = &journal;
    m.conditions = conditions;
    m.ruler = figures.ruler;
    add_counted(m, figures);
    m.page_stations = stations(figures, journal.stations.page);
    m.spine_stations = stations(figures, journal.stations.spine);
    m.bulk = figures.own().length(journal.bulk);
    m.creep_least = figures.own().length(journal.creep_least);
    m.creep_most = figures.own().length(journal.creep_most);
    m.findings = failed_checks(journal, readings(formulas, figures, conditions));
    return m;
}

}  // namespace qw::journal
