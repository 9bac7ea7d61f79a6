// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "artwork/reader.h"
#include "artwork/rows.h"

namespace qw::artwork {

/// Tells PNG from JPEG by the first bytes and reads the picture: what it is goes into `facts` (all but what the end of
/// the file must be known for, and ink), its rows into `rows`. Throws Damage.
void read_picture(Reader& reader, const Limits& limits, Purpose purpose, Facts& facts, Rows& rows);

}  // namespace qw::artwork
