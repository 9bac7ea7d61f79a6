// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "artwork/reader.h"
#include "artwork/rows.h"

namespace qw::artwork {

/// Reads a JPEG to its end mark, tells what it is in `facts` (all but bytes, digests, payload and ink) and hands its
/// rows on. For measuring, luma is taken as the file has it (Y of JFIF has the weights of an InkMap), at full size:
/// it is what the pixels' luma comes to, except where a strongly coloured pixel next to white or black leaves the
/// range of RGB and is cut off there. Throws Damage.
void read_jpeg(Reader& reader, const Limits& limits, Purpose purpose, Facts& facts, Rows& rows);

}  // namespace qw::artwork
