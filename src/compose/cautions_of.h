// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/pipeline.h"

#include <string>
#include <vector>

namespace qw::compose {

/// The cautions that belong to tools, each once, in the order in which all sheets show them. Tools that the pipeline
/// does not know have none.
std::vector<std::string> cautions_of(const kit::Pipeline& pipeline, const std::vector<std::string>& tools);

}  // namespace qw::compose
