// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/formulas.h"

#include "journal/asked.h"

#include <cstdio>

namespace qw::journal {

using formulas::Asked;
using formulas::Want;
using formulas::note_on;

namespace {

bool same_rule(const kit::RoundingRule& a, const kit::RoundingRule& b) {
    return a.way == b.way && a.step.metric == b.step.metric && a.step.us == b.step.us;
}

/// From one pass of the needle to the next. A turn goes out to the edge and back on the other side.
std::string move_of(const kit::SewingTemplate& sewing, std::size_t i) {
    const auto station = [](int number) { return "page_station_" + std::to_string(number); };
    switch (sewing.after(i)) {
        case kit::Around::spine: return std::string("2 * ") + inset_name;
        case kit::Around::head: return "2 * " + station(sewing.path[i]);
        case kit::Around::tail: return "2 * (page_height - " + station(sewing.path[i]) + ")";
        case kit::Around::nothing: break;
    }
    return "abs(" + station(sewing.path[i + 1]) + " - " + station(sewing.path[i]) + ")";
}

/// "abs(page_station_1 - page_station_2) + …": from station to station as the needle goes, and through what is sewn
/// once at each station and once at the edge in each turn.
kit::Formula path_of(const kit::SewingTemplate& sewing) {
    std::string text;
    std::size_t ways_through = sewing.path.size();
    for (std::size_t i = 0; i + 1 < sewing.path.size(); ++i) {
        text += (i == 0 ? "" : " + ") + move_of(sewing, i);
        if (sewing.after(i) != kit::Around::nothing) ++ways_through;
    }
    if (!sewing.through.text.empty()) text += (text.empty() ? "" : " + ") + std::to_string(ways_through) + " * " + through_name;
    return {path_name, text.empty() ? "0" : text, sewing.mark};
}

/// For which print a formula failed: what is sound at full size may not be at half of it.
std::string at_size(const Conditions& c) {
    char scale[32];
    std::snprintf(scale, sizeof scale, "%.3f", c.scale);
    return " (" + c.paper.title + ", " + name_of(c.print) + ", print scale " + scale + ")";
}

}  // namespace

Formulas::Formulas(const kit::JournalTemplate& journal) {
    std::vector<FaultNote> notes;
    vocabulary_.emplace(journal, notes);
    if (journal.sewing) path_ = path_of(*journal.sewing);
    read(journal, notes);
    for (const kit::PieceTemplate& piece : journal.pieces) {
        add_cut(piece.width, piece.rounding, piece.name + ".width", notes);
        add_cut(piece.height, piece.rounding, piece.name + ".height", notes);
    }
    for (const kit::LengthTemplate& length : journal.cut_lengths) add_cut(length.length, length.rounding, length.name + ".length", notes);
    if (!notes.empty()) throw Fault(FaultKind::not_understood, std::move(notes));
}

void Formulas::read(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes) {
    std::vector<Asked> named = formulas_of(journal), others;
    const std::size_t in_template = named_formulas(journal);
    others.assign(named.begin() + static_cast<std::ptrdiff_t>(in_template), named.end());
    named.resize(in_template);
    if (path_) named.push_back({&*path_, path_name, Want::length});
    reckoning_.emplace(vocabulary_->names(), named, others, notes);
}

void Formulas::add_cut(const kit::Formula& formula, const kit::RoundingRule& rule, const std::string& place, std::vector<FaultNote>& notes) {
    const std::size_t first = formula.text.find_first_not_of(' '), last = formula.text.find_last_not_of(' ');
    if (first == std::string::npos) return;
    const formulas::Names& names = vocabulary_->names();
    const std::optional<std::size_t> slot = names.find(formula.text.substr(first, last - first + 1));
    if (!slot || *slot < names.first_evaluated()) return;  // no named value: nothing follows from it
    for (const Cut& cut : cuts_) {
        if (cut.slot != *slot) continue;
        if (!same_rule(cut.rule, rule))
            notes.push_back(note_on({&formula, place, Want::length}, "formula-two-roundings", "is already rounded in another way elsewhere",
                                    {}, "give this piece a value of its own"));
        return;
    }
    cuts_.push_back({*slot, &formula, rule});
}

Figures Formulas::in(UnitSystem system, const Conditions& conditions) {
    return reckoning_->in([&](std::vector<double>& slots, double unit) { vocabulary_->fill(slots, conditions, system, unit); }, at_size(conditions));
}

Figures Formulas::rounded(UnitSystem system, const Conditions& conditions, const Figures& exact) {
    std::vector<std::optional<double>> shown(vocabulary_->names().size());
    for (const Cut& cut : cuts_)
        shown[cut.slot] = round_to_step(exact.length(*cut.formula), cut.rule.step.in(system), cut.rule.way).in_mm();
    return reckoning_->again([&](std::vector<double>& slots, double unit) { vocabulary_->fill(slots, conditions, system, unit); }, exact, shown);
}

}  // namespace qw::journal
