// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/manifest.h"
#include "kit/pipeline.h"

#include <string>

namespace qw::kit {

/// The stock of that name, with the kit's own caliper where `calipers` gives one. Throws Fault (not_understood) for a
/// name that stocks.yaml does not have.
Stock stock_of(const Manifest& manifest, const Pipeline& pipeline, const std::string& name);

}  // namespace qw::kit
