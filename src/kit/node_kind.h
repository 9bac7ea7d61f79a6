// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/node.h"

#include <string>

namespace qw::kit {

/// Whether a value is of the kind that belongs there; told when it is something else, with `example` in the message.
bool is_map(const Node& node, Faults& faults, const std::string& example);
bool is_list(const Node& node, Faults& faults, const std::string& example);
/// The text of a scalar, or null when it has been told that it is none.
const std::string* scalar_text(const Node& node, Faults& faults, const std::string& expected);

}  // namespace qw::kit
