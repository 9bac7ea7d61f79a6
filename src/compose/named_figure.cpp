// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/named_figure.h"

#include "compose/fractions.h"

#include <algorithm>

namespace qw::compose {

std::string stepped_figure(Length value, UnitSystem system, Rounding way) {
    const Length step = system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16);
    return real_fractions(show(round_to_step(value, step, way), system));
}

std::string named_figure(const journal::Measures& m, const std::string& name, UnitSystem system, Rounding way) {
    if (const journal::ToldFigure* told = m.figure(name)) return real_fractions(told->text(system));
    const auto& lengths = m.journal->lengths;
    const auto written = std::find_if(lengths.begin(), lengths.end(), [&](const kit::NamedLength& l) { return l.name == name; });
    if (written != lengths.end()) {
        if (written->printed) return stepped_figure(written->value.in(system) * m.conditions.scale, system, way);
        return real_fractions(show(written->value.in(system), system));
    }
    return m.named.count(name) ? stepped_figure(m.named_length(name), system, way) : std::string();
}

}  // namespace qw::compose
