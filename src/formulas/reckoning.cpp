// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/reckoning.h"

#include "base/unit_system.h"
#include "formulas/mismatch.h"
#include "formulas/order.h"
#include "formulas/soundness.h"

#include <cmath>

namespace qw::formulas {

namespace {

constexpr double longest_mm = 100'000;  // what the readers of lengths accept

void append(std::vector<FaultNote>& notes, const Fault& fault) {
    notes.insert(notes.end(), fault.notes().begin(), fault.notes().end());
}

void throw_if_any(std::vector<FaultNote>& notes) {
    if (!notes.empty()) throw Fault(FaultKind::not_understood, std::move(notes));
}

/// Holds a result against what is asked for at its place.
std::optional<FaultNote> unfit(const Asked& asked, Figure figure) {
    if (figure.kind == Kind::length && std::abs(figure.value) > longest_mm)
        return note_on(asked, "formula-too-long", "is longer than 100 m");
    const bool wants_length = asked.want == Want::length || asked.want == Want::size || asked.want == Want::coordinate;
    if (wants_length && figure.kind == Kind::number)
        return note_on(asked, "formula-not-a-length", "is a number, no length", "a length", "add or multiply by a named length");
    if ((asked.want == Want::number || asked.want == Want::count) && figure.kind == Kind::length)
        return note_on(asked, "formula-not-a-number", "is a length, no number", "a number", "divide by a length");
    if (wants_length && asked.want != Want::coordinate && figure.value < 0)
        return note_on(asked, "formula-negative", "is less than nothing: " + show_metric(Length::mm(figure.value)), "a length from 0 on",
                       "take less away from what shrinks with the page, or keep it up with max( )");
    if (asked.want == Want::size && Length::mm(figure.value) == Length())
        return note_on(asked, "formula-negative", "leaves nothing of the piece", "more than nothing",
                       "take less away from what shrinks with the page, or keep it up with max( )");
    constexpr double most_counted = 1e6, slip = 1e-6;
    if (asked.want == Want::count && (figure.value < 0 || figure.value > most_counted || std::abs(figure.value - std::round(figure.value)) > slip))
        return note_on(asked, "formula-count", "is no count", "a whole number from 0 on", "use ceil( ) or floor( )");
    return std::nullopt;
}

}  // namespace

Reckoning::Reckoning(Names names, const std::vector<Asked>& named, const std::vector<Asked>& others, std::vector<FaultNote>& notes)
    : names_(std::move(names)), slots_(names_.size()) {
    for (std::size_t i = 0; i < named.size(); ++i) add_line(named[i], names_.first_evaluated() + i, notes);
    for (const Asked& asked : others) add_line(asked, std::nullopt, notes);
    put_in_order(named.size(), notes);
}

void Reckoning::add_line(const Asked& asked, std::optional<std::size_t> slot, std::vector<FaultNote>& notes) {
    Line line{asked, std::nullopt, slot};
    try {
        line.program.emplace(asked, names_, slots_);
    } catch (const Fault& fault) {
        append(notes, fault);
    }
    lines_.push_back(std::move(line));
}

void Reckoning::put_in_order(std::size_t named, std::vector<FaultNote>& notes) {
    const std::size_t first = names_.first_evaluated();
    std::vector<std::vector<std::size_t>> uses(named);
    for (std::size_t i = 0; i < named; ++i) {
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
    for (std::size_t i = named; i < lines_.size(); ++i) ordered.push_back(std::move(lines_[i]));
    lines_ = std::move(ordered);
}

Figures Reckoning::in(const Fill& fill, const std::string& where) {
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
        fill(slots_, unit);
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
            notes.push_back(unsound(asked, fill, results));
            lose(i);
            continue;
        }
        const Figure figure{results[i].front(), *kind};
        if (std::optional<FaultNote> note = unfit(asked, figure)) {
            note->what += behind(asked) + where;
            notes.push_back(std::move(*note));
        }
        figures.set(*asked.formula, figure);
    }
    throw_if_any(notes);
    return figures;
}

FaultNote Reckoning::unsound(const Asked& asked, const Fill& fill, const std::vector<std::vector<double>>& results) const {
    std::vector<std::vector<double>> known(unit_sizes.size(), std::vector<double>(slots_.size()));
    for (std::size_t u = 0; u < unit_sizes.size(); ++u) fill(known[u], unit_sizes[u]);
    const auto kind = [&](const std::string& name) -> std::optional<Kind> {
        const auto slot = names_.find(name);
        if (!slot) return std::nullopt;
        for (std::size_t i = 0; i < lines_.size(); ++i)
            if (lines_[i].slot == slot) return results[i].size() == unit_sizes.size() ? kind_of(results[i]) : std::nullopt;
        std::vector<double> values;
        for (const std::vector<double>& slots : known) values.push_back(slots[*slot]);
        return kind_of(values);
    };
    const auto mismatch = mismatch_in(asked, kind);
    const std::string expected = "a length, or a number, in whatever unit lengths are counted";
    if (mismatch) return note_on(asked, "formula-unsound", mismatch->what, expected, mismatch->mend);
    return note_on(asked, "formula-unsound", "is neither a length nor a number: it adds, compares or multiplies what does not go together", expected,
                   "name the length that a plain number stands for");
}

std::string Reckoning::behind(const Asked& asked) const {
    for (const Line& line : lines_)
        if (line.slot && formula_name(line.asked.formula->name) == asked.formula->text && line.asked.formula != asked.formula)
            return ", from '" + line.asked.formula->text + "'";
    return {};
}

Figures Reckoning::again(const Fill& fill, const Figures& exact, const std::vector<std::optional<double>>& instead) {
    fill(slots_, 1);
    Figures figures;
    for (const Line& line : lines_) {
        const double value = line.slot && instead[*line.slot] ? *instead[*line.slot] : line.program->run();
        if (line.slot) slots_[*line.slot] = value;
        figures.set(*line.asked.formula, {value, exact.at(*line.asked.formula).kind});
    }
    return figures;
}

}  // namespace qw::formulas
