// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/map_reader.h"
#include "kit/set_reader.h"

#include <vector>

namespace qw::kit {

/// Reads the keys that only a set of parts has. Its faces are held against those of its template, and tell whether the set
/// is duplex. `is_part` is false for a set whose role is not known: then nothing is asked for.
void read_part_keys(MapReader& map, bool is_part, const SetContext& context, ArtworkFinder& finder, Set& set, Faults& faults);
/// Tells each of these keys in a set of another role.
void forbid_part_keys(MapReader& map);

/// Which set goes in which pocket of which: what is no part, has no pocket, not this one, or goes in a circle is told.
void check_goes_in(const std::vector<Set>& sets, const Pipeline& pipeline, Faults& faults);
/// What sets are glued to: the page, or a piece of the journal that the kit's choices leave there.
void check_goes_on(const std::vector<Set>& sets, const JournalTemplate& journal, const Choices& choices, Faults& faults);

}  // namespace qw::kit
