// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/net.h"

#include <optional>

namespace qw::parts {

/// The edge with which an outline first crosses or touches itself, within `same_point`; nothing when it does not.
std::optional<std::size_t> crossing_edge(const Outline& outline);

}  // namespace qw::parts
