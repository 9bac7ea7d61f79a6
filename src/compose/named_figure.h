// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"
#include "texts/passages.h"

#include <string>

namespace qw::compose {

/// What a template's named length says in a unit system, with real fractions: a told figure of that name as it is told;
/// a length of the template as written there (printed ones at this print's scale); a computed value, which is there in
/// the paper's own ruler only, to 0.5 mm or 1/16 in of either ruler. Empty when there is none of that name.
std::string named_figure(const journal::Measures& measures, const std::string& name, UnitSystem system, Rounding way = Rounding::nearest);

/// The same as a length: just as long as its figure says, so that a drawing can add it to others. Zero when there is none.
Length named_length_as_shown(const journal::Measures& measures, const std::string& name, UnitSystem system, Rounding way = Rounding::nearest);

/// A template's name as people read it: "hinge-gap" is "Hinge gap", "least-turn-in" is "Least turn-in". Words that keep
/// their hyphen: pipeline/texts/names.mustache.
std::string title_of_name(const std::string& name, const texts::Passages& names);

/// To 0.5 mm or 1/16 in, with real fractions.
std::string stepped_figure(Length value, UnitSystem system, Rounding way = Rounding::nearest);

}  // namespace qw::compose
