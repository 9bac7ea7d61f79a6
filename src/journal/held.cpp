// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/held.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::journal {

namespace {

std::string show_number(double value) {
    char text[48];
    std::snprintf(text, sizeof text, "%.2f", value);
    std::string shown = text;
    while (shown.back() == '0') shown.pop_back();
    if (shown.back() == '.') shown.pop_back();
    return shown == "-0" ? "0" : shown;
}

Level level_of(const kit::CheckTemplate& check) {
    for (const Level level : {Level::note, Level::warning, Level::error})
        if (name_of(level) == check.level) return level;
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-level", check.mark, "check '" + check.name + "' has the unknown level '" + check.level + "'",
                                                     "note, warning or error", {}});
}

struct Told {
    std::string measured, limit, difference;
};

// Two values that an inch ruler shows alike are told in hundredths of a millimetre, or the finding would contradict itself.
Told told_lengths(Length measured, Length limit, UnitSystem system) {
    const Length apart = abs(measured - limit);
    const bool alike = show(measured, system) == show(limit, system) || show(apart, system) == show(Length(), system);
    const UnitSystem in = alike ? UnitSystem::metric : system;
    return {show(measured, in), show(limit, in), show(apart, in)};
}

Told told(const kit::CheckTemplate& check, const Reading& reading) {
    const Figure measured = reading.figures.at(check.measured), limit = reading.figures.at(check.limit);
    const bool length = measured.kind == Kind::length || limit.kind == Kind::length;
    if (length && (measured.kind == Kind::number || limit.kind == Kind::number) && !check.limit.text.empty() && !check.measured.text.empty())
        throw formulas::fault_on({&check.measured, check.name + ".measured", formulas::Want::any}, "formula-unsound",
                                 "is not of one kind with the limit '" + check.limit.text + "'", "two lengths or two numbers");
    Told said = length ? told_lengths(Length::mm(measured.value), Length::mm(limit.value), reading.system)
                       : Told{show_number(measured.value), show_number(limit.value), show_number(std::abs(measured.value - limit.value))};
    if (check.measured.text.empty()) said.measured.clear();
    if (check.limit.text.empty()) said.limit.clear();
    return said;
}

/// Nothing but the three values can stand in braces; a slip would be printed as it stands.
void check_holes(const kit::CheckTemplate& check) {
    for (const std::string* text : {&check.message, &check.mend})
        for (std::size_t at = text->find('{'); at != std::string::npos; at = text->find('{', at + 1)) {
            const std::string hole = text->substr(at, text->find('}', at) - at + 1);
            if (hole == "{measured}" || hole == "{limit}" || hole == "{difference}") continue;
            throw Fault(FaultKind::not_understood, FaultNote{"unknown-hole", check.mark, "check '" + check.name + "' shows " + hole,
                                                             "{measured}, {limit} or {difference}", {}});
        }
}

std::string filled(std::string text, const Told& said) {
    const std::pair<const char*, const std::string*> holes[] = {
        {"{measured}", &said.measured}, {"{limit}", &said.limit}, {"{difference}", &said.difference}};
    for (const auto& [hole, value] : holes) {
        const std::string name = hole;
        for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + value->size())) text.replace(at, name.size(), *value);
    }
    return text;
}

std::string when(const Reading& reading) {
    if (!reading.rounded) return {};
    if (reading.own) return " (after rounding)";
    return reading.system == UnitSystem::metric ? " (measured with a metric ruler)" : " (measured with an inch ruler)";
}

Finding finding_of(const kit::CheckTemplate& check, const Reading& reading) {
    const Told said = told(check, reading);
    Finding finding;
    finding.rule = "journal-" + check.name;
    finding.level = reading.own ? level_of(check) : std::min(level_of(check), Level::warning);
    finding.measured = said.measured;
    finding.limit = said.limit;
    finding.message = filled(check.message, said) + when(reading);
    finding.mend = filled(check.mend, said);
    return finding;
}

}  // namespace

Findings failed_checks(const kit::JournalTemplate& journal, const std::vector<Reading>& readings) {
    Findings findings;
    for (const kit::CheckTemplate& check : journal.checks) {
        level_of(check);
        check_holes(check);
        for (const Reading& reading : readings) told(check, reading);
        const auto fails = [&](const Reading& reading) { return reading.figures.at(check.holds).value == 0; };
        const auto first = std::find_if(readings.begin(), readings.end(), fails);
        if (first != readings.end()) findings.push_back(finding_of(check, *first));
    }
    return findings;
}

}  // namespace qw::journal
