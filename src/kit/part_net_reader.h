// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/map_reader.h"
#include "kit/part_template.h"
#include "kit/values.h"

#include <functional>
#include <string>

namespace qw::kit {

/// Reads what a part is: panels, how they fold and are glued, and what lies where on them. All names of panels are looked
/// up; the template's items have been read.
void read_net(MapReader& root, PartTemplate& part, const Lookup& tools, Faults& faults);

/// Hands each map of an optional list to `read`, with a reader of its own; `subject` is "the fold", and its number
/// follows. `read` need not call `done`.
void read_list_of_maps(MapReader& root, const std::string& key, const std::string& subject, const std::string& example, Faults& faults,
                       const std::function<void(const Node& item, MapReader& map)>& read);

}  // namespace qw::kit
