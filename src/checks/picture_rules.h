// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/artwork_rules.h"

#include <string>
#include <vector>

namespace qw::checks {

/// What a PNG or JPEG is that a designer may not have meant: depth, colours, pixels that are not square, an extension that
/// says another kind, a white strip along an edge.
void check_picture(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings);

/// How much ink a sheet takes: each face of a set, and both sides of thin paper together. `coverage`: 0 … 1 a page, in the
/// order in which they are printed.
void check_sheet_ink(const Rules& rules, const kit::Set& set, double grammage, const std::vector<double>& coverage, const std::string& path, Findings& findings);

}  // namespace qw::checks
