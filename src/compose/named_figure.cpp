// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/named_figure.h"

#include "compose/fractions.h"

#include <algorithm>
#include <optional>

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

}  // namespace

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
