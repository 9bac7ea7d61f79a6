// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/vocabulary.h"

#include "formulas/asked.h"

#include <algorithm>
#include <array>
#include <numbers>

namespace qw::journal {

using formulas::formula_name;

namespace {

/// What the conditions give: lengths in mm, or plain numbers.
struct Given {
    const char* word;
    bool length;
    double (*value)(const Conditions&);
};

constexpr std::array<Given, 16> given = {{
    {"page_width", true, [](const Conditions& c) { return c.page.width.in_mm(); }},
    {"page_height", true, [](const Conditions& c) { return c.page.height.in_mm(); }},
    {"cover_sheet_width", true, [](const Conditions& c) { return c.cover_sheet.width.in_mm(); }},
    {"cover_sheet_height", true, [](const Conditions& c) { return c.cover_sheet.height.in_mm(); }},
    {"page_caliper", true, [](const Conditions& c) { return c.page_stock.caliper.in_mm(); }},
    {"cover_caliper", true, [](const Conditions& c) { return c.cover_stock.caliper.in_mm(); }},
    {"board_caliper", true, [](const Conditions& c) { return c.board_stock.caliper.in_mm(); }},
    {"spine_caliper", true, [](const Conditions& c) { return c.spine_stock.caliper.in_mm(); }},
    {"glued_in", true, [](const Conditions& c) { return c.glued_in.in_mm(); }},
    {"page_grammage", false, [](const Conditions& c) { return c.page_stock.grammage; }},
    {"cover_grammage", false, [](const Conditions& c) { return c.cover_stock.grammage; }},
    {"board_printed", false, [](const Conditions& c) { return c.board_stock.printed ? 1.0 : 0.0; }},
    {"sheets", false, [](const Conditions& c) { return double(c.sheets); }},
    {"full_sheets", false, [](const Conditions& c) { return double(c.full_sheets); }},
    {"print_scale", false, [](const Conditions& c) { return c.scale; }},
    {"pi", false, [](const Conditions&) { return std::numbers::pi; }},
}};

/// Each time that the path comes to a station, a strand goes through its hole.
double most_strands(const kit::SewingTemplate& sewing) {
    std::ptrdiff_t most = 0;
    for (const int station : sewing.path) most = std::max(most, std::count(sewing.path.begin(), sewing.path.end(), station));
    return static_cast<double>(most);
}

}  // namespace

Vocabulary::Vocabulary(const kit::JournalTemplate& journal, std::vector<FaultNote>& notes) : journal_(journal) {
    for (const Given& one : given) names_.give(one.word);
    for (const kit::NamedLength& length : journal.lengths) names_.add(length.name, length.mark, notes);
    for (const kit::NamedNumber& number : journal.numbers) names_.add(number.name, number.mark, notes);
    add_chosen();
    add_thicknesses();
    names_.begin_evaluated();
    for (const kit::Formula& value : journal.values) names_.add(value.name, value.mark, notes);
    add_stations("page", journal.stations.page.size());
    add_stations("spine", journal.stations.spine.size());
    if (!journal.sewing) return;
    if (!journal.sewing->inset.text.empty()) names_.give(inset_name);
    if (!journal.sewing->through.text.empty()) names_.give(through_name);
    names_.give(path_name);
}

void Vocabulary::add_chosen() {
    const auto choose = [&](const std::string& name, double value) {
        names_.give(name);
        chosen_.push_back(value);
    };
    choose("stitch_strands", journal_.sewing ? most_strands(*journal_.sewing) : 0);
    const auto& replaced = journal_.replaced;
    for (const std::string& name : replaced) choose("has_" + formula_name(name), 0);
    std::vector<std::string> there;
    const auto add_things = [&](const auto& things) {
        for (const auto& thing : things) there.push_back(thing.name);
    };
    add_things(journal_.pieces);
    add_things(journal_.cut_lengths);
    add_things(journal_.items);
    const auto among = [](const std::vector<std::string>& names, const std::string& name) { return std::find(names.begin(), names.end(), name) != names.end(); };
    for (const std::string& name : there) {
        if (!among(replaced, name)) choose("has_" + formula_name(name), 1);
        choose("without_" + formula_name(name), 0);
    }
    for (const std::string& name : replaced)
        if (!among(there, name)) choose("without_" + formula_name(name), 1);
}

/// What a kit left out is as thick as nothing, so that formulas hold without it.
void Vocabulary::add_thicknesses() {
    const auto give = [&](const std::string& name, const kit::BothLengths& thickness) {
        const std::string word = "thickness_of_" + formula_name(name);
        if (names_.find(word)) return;
        names_.give(word);
        thicknesses_.push_back(thickness);
    };
    std::vector<std::string> there;
    const auto give_all = [&](const auto& things) {
        for (const auto& thing : things) {
            there.push_back(thing.name);
            if (thing.thickness) give(thing.name, *thing.thickness);
        }
    };
    give_all(journal_.pieces);
    give_all(journal_.cut_lengths);
    give_all(journal_.items);
    for (const std::string& name : journal_.replaced)
        if (std::find(there.begin(), there.end(), name) == there.end()) give(name, {});
}

void Vocabulary::add_stations(const std::string& line, std::size_t count) {
    for (std::size_t i = 1; i <= count; ++i) names_.give(line + "_station_" + std::to_string(i));
}

void Vocabulary::fill(std::vector<double>& slots, const Conditions& conditions, UnitSystem system, double unit) const {
    std::size_t slot = 0;
    for (const Given& one : given) slots[slot++] = one.value(conditions) * (one.length ? unit : 1);
    for (const kit::NamedLength& length : journal_.lengths)
        slots[slot++] = length.value.in(system).in_mm() * (length.printed ? conditions.scale : 1) * unit;
    for (const kit::NamedNumber& number : journal_.numbers) slots[slot++] = number.value;
    for (const double value : chosen_) slots[slot++] = value;
    for (const kit::BothLengths& thickness : thicknesses_) slots[slot++] = thickness.in(system).in_mm() * unit;
}

}  // namespace qw::journal
