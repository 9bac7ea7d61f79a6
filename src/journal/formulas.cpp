// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/formulas.h"

#include "journal/order.h"
#include "journal/soundness.h"

#include <cmath>
#include <cstdio>

namespace qw::journal {

namespace {

constexpr double longest_mm = 100'000;  // what the readers of lengths accept

void append(std::vector<FaultNote>& notes, const Fault& fault) {
    notes.insert(notes.end(), fault.notes().begin(), fault.notes().end());
}

void throw_if_any(std::vector<FaultNote>& notes) {
    if (!notes.empty()) throw Fault(FaultKind::not_understood, std::move(notes));
}

bool same_rule(const kit::RoundingRule& a, const kit::RoundingRule& b) {
    return a.way == b.way && a.step.metric == b.step.metric && a.step.us == b.step.us;
}

/// "abs(page_station_1 - page_station_2) + …": from station to station as the needle goes.
kit::Formula path_of(const kit::SewingTemplate& sewing) {
    std::string text;
    const auto station = [](int number) { return "page_station_" + std::to_string(number); };
    for (std::size_t i = 1; i < sewing.path.size(); ++i)
        text += (i == 1 ? "abs(" : " + abs(") + station(sewing.path[i]) + " - " + station(sewing.path[i - 1]) + ")";
    return {path_name, text.empty() ? "0" : text, sewing.mark};
}

/// Holds a result against what is asked for at its place.
std::optional<FaultNote> unfit(const Asked& asked, Figure figure) {
    if (figure.kind == Kind::length && std::abs(figure.value) > longest_mm)
        return note_on(asked, "formula-too-long", "is longer than 100 m");
    const bool wants_length = asked.want == Want::length || asked.want == Want::size;
    if (wants_length && figure.kind == Kind::number)
        return note_on(asked, "formula-not-a-length", "is a number, no length", "a length", "add or multiply by a named length");
    if ((asked.want == Want::number || asked.want == Want::count) && figure.kind == Kind::length)
        return note_on(asked, "formula-not-a-number", "is a length, no number", "a number", "divide by a length");
    if (wants_length && figure.value < 0)
        return note_on(asked, "formula-negative", "is less than nothing: " + show_metric(Length::mm(figure.value)), "a length from 0 on",
                       "take less away from what shrinks with the page, or keep it up with max( )");
    if (asked.want == Want::size && Length::mm(figure.value) == Length())
        return note_on(asked, "formula-negative", "leaves nothing of the piece", "more than nothing",
                       "take less away from what shrinks with the page, or keep it up with max( )");
    constexpr double limit = 1e6, near = 1e-6;
    if (asked.want == Want::count && (figure.value < 0 || figure.value > limit || std::abs(figure.value - std::round(figure.value)) > near))
        return note_on(asked, "formula-count", "is no count", "a whole number from 0 on", "use ceil( ) or floor( )");
    return std::nullopt;
}

/// For which print a formula failed: what is sound at full size may not be at half of it.
std::string at_size(const Conditions& c) {
    char scale[32];
    std::snprintf(scale, sizeof scale, "%.3f", c.scale);
    return " (" + c.paper.title + ", " + name_of(c.print) + ", print scale " + scale + ")";
}

}  // namespace

Figure Figures::at(const kit::Formula& formula) const {
    const auto found = by_formula_.find(&formula);
    return found == by_formula_.end() ? Figure{} : found->second;
}

int Figures::count(const kit::Formula& formula) const { return static_cast<int>(std::lround(at(formula).value)); }

Formulas::Formulas(const kit::JournalTemplate& journal) {
    std::vector<FaultNote> notes;
    vocabulary_.emplace(journal, notes);
    slots_.resize(vocabulary_->size());
    if (journal.sewing) path_ = path_of(*journal.sewing);
    read(journal, notes);
    put_in_order(notes);
    for (const kit::PieceTemplate& piece : journal.pieces) {
        add_cut(piece.width, piece.rounding, piece.name + ".width", notes);
        add_cut(piece.height, piece.rounding, piece.name + ".height", notes);
    }
    for (const kit::LengthTemplate& length : journal.cut_lengths) add_cut(length.length, length.rounding, length.name + ".length", notes);
    throw_if_any(notes);
}

void Formulas::add_line(const Asked& asked, std::vector<FaultNote>& notes) {
    Line line;
    line.asked = asked;
    if (lines_.size() < named_) line.slot = vocabulary_->first_evaluated() + lines_.size();
    try {
        line.program.emplace(asked, *vocabulary_, slots_);
    } catch (const Fault& fault) {
        append(notes, fault);
    }
    lines_.push_back(std::move(line));
}

void Formulas::read(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes) {
    const std::size_t in_template = journal.values.size() + journal.stations.page.size() + journal.stations.spine.size();
    named_ = in_template + (path_ ? 1 : 0);
    for (const Asked& asked : formulas_of(journal)) {
        if (path_ && lines_.size() == in_template) add_line({&*path_, path_name, Want::length}, notes);
        add_line(asked, notes);
    }
    if (path_ && lines_.size() == in_template) add_line({&*path_, path_name, Want::length}, notes);
}

void Formulas::put_in_order(std::vector<FaultNote>& notes) {
    const std::size_t first = vocabulary_->first_evaluated();
    std::vector<std::vector<std::size_t>> uses(named_);
    for (std::size_t i = 0; i < named_; ++i) {
        if (!lines_[i].program) continue;
        for (const std::size_t slot : lines_[i].program->uses())
            if (slot >= first) uses[i].push_back(slot - first);
    }
    const Order found = order_of(uses);
    for (const std::vector<std::size_t>& cycle : found.cycles) {
        std::string path;
        for (const std::size_t member : cycle) path += (path.empty() ? "" : " -> ") + lines_[member].asked.place;
        notes.push_back(note_on(lines_[cycle.front()].asked, "formula-cycle", "leads back to itself: " + path, {},
                                "let one of them follow from something else"));
    }
    std::vector<Line> ordered;
    ordered.reserve(lines_.size());
    for (const std::size_t i : found.order) ordered.push_back(std::move(lines_[i]));
    for (std::size_t i = named_; i < lines_.size(); ++i) ordered.push_back(std::move(lines_[i]));
    lines_ = std::move(ordered);
}

void Formulas::add_cut(const kit::Formula& formula, const kit::RoundingRule& rule, const std::string& place, std::vector<FaultNote>& notes) {
    const std::size_t first = formula.text.find_first_not_of(' '), last = formula.text.find_last_not_of(' ');
    if (first == std::string::npos) return;
    const std::optional<std::size_t> slot = vocabulary_->find(formula.text.substr(first, last - first + 1));
    if (!slot || *slot < vocabulary_->first_evaluated()) return;  // no named value: nothing follows from it
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
    std::vector<std::vector<double>> results(lines_.size());
    std::vector<bool> lost(lines_.size()), lost_slot(slots_.size());
    std::vector<FaultNote> notes;
    const auto lose = [&](std::size_t i) {
        lost[i] = true;
        if (lines_[i].slot) lost_slot[*lines_[i].slot] = true;
    };
    const auto rests_on_lost = [&](std::size_t i) {
        for (const std::size_t slot : lines_[i].program->uses())
            if (lost_slot[slot]) return true;
        return false;
    };
    for (const double unit : unit_sizes) {
        vocabulary_->fill(slots_, conditions, system, unit);
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            if (!lost[i] && rests_on_lost(i)) lose(i);  // its own fault is another's
            if (lost[i]) continue;
            try {
                results[i].push_back(lines_[i].program->run());
                if (lines_[i].slot) slots_[*lines_[i].slot] = results[i].back();
            } catch (const Fault& fault) {
                append(notes, fault);
                lose(i);
            }
        }
    }
    Figures figures;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        if (!lost[i] && rests_on_lost(i)) lose(i);
        if (lost[i]) continue;
        const Asked& asked = lines_[i].asked;
        const std::optional<Kind> kind = kind_of(results[i]);
        if (!kind) {
            notes.push_back(note_on(asked, "formula-unsound", "is neither a length nor a number: it adds, compares or multiplies what does not go together",
                                    "a length, or a number, in whatever unit lengths are counted", "name the length that a plain number stands for"));
            lose(i);
            continue;
        }
        const Figure figure{results[i].front(), *kind};
        if (std::optional<FaultNote> note = unfit(asked, figure)) {
            note->what += behind(asked) + at_size(conditions);
            notes.push_back(std::move(*note));
        }
        figures.set(*asked.formula, figure);
    }
    throw_if_any(notes);
    return figures;
}

std::string Formulas::behind(const Asked& asked) const {
    for (std::size_t i = 0; i < named_; ++i)
        if (formula_name(lines_[i].asked.formula->name) == asked.formula->text && lines_[i].asked.formula != asked.formula)
            return ", from '" + lines_[i].asked.formula->text + "'";
    return {};
}

Figures Formulas::rounded(UnitSystem system, const Conditions& conditions, const Figures& exact) {
    std::vector<std::optional<double>> shown(slots_.size());
    for (const Cut& cut : cuts_)
        shown[cut.slot] = round_to_step(exact.length(*cut.formula), cut.rule.step.in(system), cut.rule.way).in_mm();
    vocabulary_->fill(slots_, conditions, system, 1);
    Figures figures;
    for (const Line& line : lines_) {
        const double value = line.slot && shown[*line.slot] ? *shown[*line.slot] : line.program->run();
        if (line.slot) slots_[*line.slot] = value;
        figures.set(*line.asked.formula, {value, exact.at(*line.asked.formula).kind});
    }
    return figures;
}

}  // namespace qw::journal
