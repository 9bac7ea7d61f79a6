// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "artwork/reader.h"
#include "artwork/rows.h"

namespace qw::artwork {

/// Reads a PNG from its signature to its IEND chunk (PNG specification, third edition), checks every chunk's check
/// sum, tells what it is in `facts` (all but bytes, sha256 and ink) and hands its rows on. Throws Damage.
void read_png(Reader& reader, const Limits& limits, Facts& facts, Rows& rows);

}  // namespace qw::artwork
