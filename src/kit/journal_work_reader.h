// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/journal_template.h"
#include "kit/map_reader.h"
#include "kit/source_text.h"
#include "kit/values.h"

namespace qw::kit {

/// Readers of how a journal is made. They look at what the template holds already: its pieces, cut lengths, items and
/// figures, and for sewing and steps its stations.

void read_stations(MapReader& root, JournalTemplate& journal, Faults& faults);

/// A path that cannot be sewn is told as "bad-path". The thread must be a cut length that is there whatever is chosen.
void read_sewing(MapReader& root, JournalTemplate& journal, Faults& faults);

/// `tools` reads a list of names of tools; `source` is the template's file, if it is at hand.
void read_steps(MapReader& root, JournalTemplate& journal, const Reader<std::vector<std::string>>& tools, const SourceText* source, Faults& faults);

}  // namespace qw::kit
