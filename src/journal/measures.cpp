// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/measures.h"

#include "journal/formulas.h"
#include "journal/full_sheets.h"
#include "journal/held.h"

#include <algorithm>
#include <cmath>

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

/// Holes are told from the head to the tail and lie on the page; anything else would be pierced as it stands. A length
/// that does not shrink can bring them past each other on a small print, so it is the size that fails, not the template.
Findings misplaced_stations(const Measures& m) {
    Length before;
    for (std::size_t i = 0; i < m.page_stations.size(); ++i) {
        const Length here = m.page_stations[i].exact, page = m.conditions.page.height;
        const std::string station = "Hole " + std::to_string(i + 1) + " in the pages";
        if (here > page)
            return {{"journal-stations-on-page", Level::error, {}, 0, 0, show(here, m.ruler), show(page, m.ruler), station + " would lie beyond the page.",
                     "Print the pages larger."}};
        if (i > 0 && here <= before)
            return {{"journal-stations-on-page", Level::error, {}, 0, 0, show(here, m.ruler), show(before, m.ruler),
                     station + " would not lie below the one before it.", "Print the pages larger."}};
        before = here;
    }
    return {};
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

/// Up for what must be there, down for what must have room; a value that went through several sums is taken as whole
/// when it is within a billionth of it.
int whole(double value, Rounding way) {
    const double near = 1e-9 * std::max(1.0, std::abs(value));
    if (way == Rounding::up) return static_cast<int>(std::ceil(value - near));
    if (way == Rounding::down) return static_cast<int>(std::floor(value + near));
    return static_cast<int>(std::lround(value));
}

void add_figures(Measures& m, const Both& figures) {
    for (const kit::FigureTemplate& figure : m.journal->figures) {
        ToldFigure told;
        told.of = &figure;
        const Figure own = figures.own().at(figure.value);
        told.is_length = !figure.number;
        if (told.is_length) told.length = shown(figures, figure.value, figure.rounding);
        else told.number = whole(own.value, figure.rounding.way);
        m.figures.push_back(told);
    }
}

void add_sewing(Measures& m, const Both& figures, const kit::Formula* path) {
    if (!m.journal->sewing) return;
    const kit::SewingTemplate& sewing = *m.journal->sewing;
    Sewing sewn{&sewing, figures.own().count(sewing.signatures), figures.own().count(sewing.rows), {}, figures.own().length(*path)};
    kit::RoundingRule rule;
    rule.way = Rounding::nearest;
    if (sewn.rows > 1) sewn.row_gap = shown(figures, sewing.row_gap, rule);
    m.sewing = sewn;
}

/// By the template's own names: its lengths on this print, and its values that are lengths.
void add_named(Measures& m, const Figures& as_shown) {
    for (const kit::NamedLength& length : m.journal->lengths)
        m.named[length.name] = length.value.in(m.ruler) * (length.printed ? m.conditions.scale : 1);
    for (const kit::Formula& value : m.journal->values)
        if (as_shown.at(value).kind != Kind::number) m.named[value.name] = as_shown.length(value);
}

void add_steps(Measures& m, const Both& figures) {
    for (const kit::StepTemplate& step : m.journal->steps)
        if (step.when.text.empty() || figures.own().at(step.when).value != 0) m.steps.push_back(&step);
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

const CutLength* Measures::length(const std::string& name) const {
    const auto found = std::find_if(lengths.begin(), lengths.end(), [&](const CutLength& l) { return l.of->name == name; });
    return found == lengths.end() ? nullptr : &*found;
}

const ToldFigure* Measures::figure(const std::string& name) const {
    const auto found = std::find_if(figures.begin(), figures.end(), [&](const ToldFigure& f) { return f.of->name == name; });
    return found == figures.end() ? nullptr : &*found;
}

Length Measures::named_length(const std::string& name) const {
    const auto found = named.find(name);
    return found == named.end() ? Length() : found->second;
}

std::string ToldFigure::text(UnitSystem system) const {
    if (!is_length) return std::to_string(number);
    return show(system == UnitSystem::metric ? length.metric : length.us, system);
}

Calculation::Calculation(const kit::JournalTemplate& journal) : journal_(journal), formulas_(std::make_unique<Formulas>(journal)) {}
Calculation::Calculation(Calculation&&) noexcept = default;
Calculation::~Calculation() = default;

Measures Calculation::at(const Conditions& conditions) {
    Both figures;
    figures.ruler = conditions.paper.ruler;
    figures.metric = formulas_->in(UnitSystem::metric, conditions);
    figures.us = formulas_->in(UnitSystem::us, conditions);

    Measures m;
    m.journal = &journal_;
    m.conditions = conditions;
    m.ruler = figures.ruler;
    add_counted(m, figures);
    m.page_stations = stations(figures, journal_.stations.page);
    m.spine_stations = stations(figures, journal_.stations.spine);
    add_figures(m, figures);
    add_sewing(m, figures, formulas_->path());
    add_steps(m, figures);
    m.bulk = figures.own().length(journal_.bulk);
    m.creep_least = figures.own().length(journal_.creep_least);
    m.creep_most = figures.own().length(journal_.creep_most);
    const std::vector<Reading> judged = readings(*formulas_, figures, conditions);
    add_named(m, judged[1].figures);  // the paper's own system after rounding
    m.findings = failed_checks(journal_, judged);
    for (Finding& finding : misplaced_stations(m)) m.findings.push_back(std::move(finding));
    if (const auto few = too_few_full_sheets(m)) m.findings.push_back(*few);
    return m;
}

Measures compute(const kit::JournalTemplate& journal, const Conditions& conditions) { return Calculation(journal).at(conditions); }

}  // namespace qw::journal
