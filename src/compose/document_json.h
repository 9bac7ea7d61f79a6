// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/document.h"
#include "compose/placement.h"

#include <string>

namespace qw::compose {

/// A document as JSON, for people who look for the reason of a mark on a page: lengths in millimetres, matrices as
/// PDF has them, items in the order in which they are painted. Two-space indent, one newline at the end.
std::string to_json(const Document& document);

/// The same with the plan of each page.
std::string to_json(const ArtworkDocument& document);

}  // namespace qw::compose
