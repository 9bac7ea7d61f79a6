// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/journal_template.h"
#include "kit/map_reader.h"

namespace qw::kit {

/// Reads `path`, `begins`, `goes-on` and `inset` of a template's `sewing`. A path that cannot be sewn is told as
/// "bad-path", at the station or word that is wrong, with what is right there.
void read_path(MapReader& map, SewingTemplate& sewing, const StationTemplate& stations, Faults& faults);

}  // namespace qw::kit
