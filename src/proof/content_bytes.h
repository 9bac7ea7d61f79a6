// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/content_walk.h"

#include <string>

namespace qw::proof {

/// A page's Contents (a stream or an array of them, ISO 32000-1 7.8.2) or a form's stream, decoded within the budget.
/// Throws Unreadable.
std::string content_bytes(Object streams, Budget& budget);

}  // namespace qw::proof
