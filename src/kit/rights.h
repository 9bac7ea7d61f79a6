// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/manifest.h"
#include "kit/map_reader.h"
#include "kit/node.h"

#include <map>
#include <optional>
#include <string>

namespace qw::kit {

/// `{ made-by: Wrack Line Paper Room, allowed-by: own work, since: 2026-03-01 }`; `since` may be left out.
std::optional<Rights> rights_value(const Node& node, Faults& faults);
/// The same keys among others of a map.
Rights read_rights(MapReader& map);
/// Fonts of PDF artwork by the names that the PDF gives them, each with its rights.
std::map<std::string, Rights> read_font_rights(const Node& node, Faults& faults);

}  // namespace qw::kit
