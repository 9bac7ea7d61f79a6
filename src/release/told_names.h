// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace qw::release {

/// "Library-card pockets" as claims are tied to it: "library card pocket".
std::string phrase_of(const std::string& name);

/// The names that a tool or material goes by: what its title says before a comma or a "with", and its key.
/// "Craft knife with new blades", "craft-knife" → "craft knife".
std::vector<std::string> names_of_bought(const std::string& title, const std::string& key);

/// The last words of those, where they tell something by themselves: "knife", but not "paper".
std::vector<std::string> loose_names(const std::vector<std::string>& names);

}  // namespace qw::release
