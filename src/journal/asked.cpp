// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/asked.h"

namespace qw::journal {

namespace {

using formulas::Asked;
using formulas::Want;
using List = std::vector<Asked>;

void add_optional(List& list, const kit::Formula& formula, std::string place, Want want) {
    if (!formula.text.empty()) list.push_back({&formula, std::move(place), want});
}

void add_pieces(List& list, const kit::JournalTemplate& journal) {
    for (const kit::PieceTemplate& piece : journal.pieces) {
        list.push_back({&piece.count, piece.name + ".count", Want::count});
        list.push_back({&piece.width, piece.name + ".width", Want::size});
        list.push_back({&piece.height, piece.name + ".height", Want::size});
    }
}

void add_stations(List& list, const std::vector<kit::Formula>& stations, const std::string& line) {
    for (std::size_t i = 0; i < stations.size(); ++i)
        list.push_back({&stations[i], "stations." + line + "[" + std::to_string(i + 1) + "]", Want::length});
}

void add_bought(List& list, const kit::JournalTemplate& journal) {
    for (const kit::LengthTemplate& length : journal.cut_lengths) {
        list.push_back({&length.count, length.name + ".count", Want::count});
        list.push_back({&length.length, length.name + ".length", Want::length});
    }
    for (const kit::ItemTemplate& item : journal.items) list.push_back({&item.count, item.name + ".count", Want::count});
}

void add_told(List& list, const kit::JournalTemplate& journal) {
    for (const kit::FigureTemplate& figure : journal.figures) list.push_back({&figure.value, figure.name + ".value", figure.number ? Want::number : Want::length});
    if (!journal.sewing) return;
    list.push_back({&journal.sewing->signatures, "sewing.signatures", Want::count});
    list.push_back({&journal.sewing->rows, "sewing.rows", Want::count});
    add_optional(list, journal.sewing->row_gap, "sewing.row-gap", Want::length);
}

void add_checks(List& list, const kit::JournalTemplate& journal) {
    for (const kit::CheckTemplate& check : journal.checks) {
        list.push_back({&check.holds, check.name + ".holds", Want::number});
        add_optional(list, check.measured, check.name + ".measured", Want::any);
        add_optional(list, check.limit, check.name + ".limit", Want::any);
    }
}

void add_steps(List& list, const kit::JournalTemplate& journal) {
    for (std::size_t i = 0; i < journal.steps.size(); ++i)
        add_optional(list, journal.steps[i].when, "steps[" + std::to_string(i + 1) + "].when", Want::number);
}

}  // namespace

std::size_t named_formulas(const kit::JournalTemplate& journal) {
    const std::size_t always = journal.values.size() + journal.stations.page.size() + journal.stations.spine.size();
    if (!journal.sewing) return always;
    return always + (journal.sewing->inset.text.empty() ? 0 : 1) + (journal.sewing->through.text.empty() ? 0 : 1);
}

std::vector<formulas::Asked> formulas_of(const kit::JournalTemplate& journal) {
    List list;
    for (const kit::Formula& value : journal.values) list.push_back({&value, value.name, Want::any});
    add_stations(list, journal.stations.page, "page");
    add_stations(list, journal.stations.spine, "spine");
    if (journal.sewing) {
        add_optional(list, journal.sewing->inset, "sewing.inset", Want::length);
        add_optional(list, journal.sewing->through, "sewing.through", Want::length);
    }
    add_pieces(list, journal);
    add_bought(list, journal);
    add_told(list, journal);
    add_optional(list, journal.bulk, "bulk", Want::length);
    add_optional(list, journal.creep_least, "creep.least", Want::length);
    add_optional(list, journal.creep_most, "creep.most", Want::length);
    add_checks(list, journal);
    add_steps(list, journal);
    return list;
}

}  // namespace qw::journal
