// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/named_figure.h"

#include "compose/fractions.h"

#include <algorithm>
#include <optional>
#include <sstream>
#include <vector>

namespace qw::compose {

namespace {

Length stepped(Length value, UnitSystem system, Rounding way) {
    return round_to_step(value, system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16), way);
}

/// As fine as show() tells a length.
Length as_written(Length value, UnitSystem system) {
    const std::int64_t step = (system == UnitSystem::metric ? Length::mm(0.01) : Length::inches(1.0 / 64)).in_units(), units = value.in_units();
    return Length::units((units + (units < 0 ? -step : step) / 2) / step * step);
}

/// Nothing when there is none of that name.
std::optional<Length> as_shown(const journal::Measures& m, const std::string& name, UnitSystem system, Rounding way) {
    if (const journal::ToldFigure* told = m.figure(name); told && told->is_length) return system == UnitSystem::metric ? told->length.metric : told->length.us;
    const auto& lengths = m.journal->lengths;
    const auto written = std::find_if(lengths.begin(), lengths.end(), [&](const kit::NamedLength& l) { return l.name == name; });
    if (written != lengths.end()) {
        if (written->printed) return stepped(written->value.in(system) * m.conditions.scale, system, way);
        return as_written(written->value.in(system), system);
    }
    return m.named.count(name) ? std::optional(stepped(m.named_length(name), system, way)) : std::nullopt;
}

std::vector<std::string> parts_at(const std::string& text, char mark) {
    std::vector<std::string> parts;
    std::istringstream rest(text);
    for (std::string part; std::getline(rest, part, mark);) {
        part.erase(0, part.find_first_not_of(' '));
        if (!part.empty()) parts.push_back(part);
    }
    return parts;
}

/// How many words from `at` on are one word with hyphens; the longest counts.
std::size_t hyphened(const std::vector<std::string>& words, std::size_t at, const std::vector<std::string>& known) {
    std::string joined = words[at];
    std::size_t count = 1;
    for (std::size_t i = at + 1; i < words.size(); ++i) {
        joined += "-" + words[i];
        if (std::find(known.begin(), known.end(), joined) != known.end()) count = i + 1 - at;
    }
    return count;
}

}  // namespace

std::string title_of_name(const std::string& name, const texts::Passages& names) {
    const auto words = parts_at(name, '-'), known = parts_at(names.line("hyphened"), ',');
    std::string title;
    for (std::size_t i = 0; i < words.size();) {
        const std::size_t end = i + hyphened(words, i, known);
        title += title.empty() ? "" : " ";
        for (std::size_t word = i; word < end; ++word) title += (word > i ? "-" : "") + words[word];
        i = end;
    }
    if (!title.empty() && title[0] >= 'a' && title[0] <= 'z') title[0] = static_cast<char>(title[0] - 'a' + 'A');
    return title;
}

std::string stepped_figure(Length value, UnitSystem system, Rounding way) { return real_fractions(show(stepped(value, system, way), system)); }

Length named_length_as_shown(const journal::Measures& m, const std::string& name, UnitSystem system, Rounding way) {
    return as_shown(m, name, system, way).value_or(Length());
}

std::string named_figure(const journal::Measures& m, const std::string& name, UnitSystem system, Rounding way) {
    if (const journal::ToldFigure* told = m.figure(name); told && !told->is_length) return told->text(system);
    const auto length = as_shown(m, name, system, way);
    return length ? real_fractions(show(*length, system)) : std::string();
}

}  // namespace qw::compose
