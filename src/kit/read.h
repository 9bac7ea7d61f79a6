// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"

namespace qw::kit {

/// Reads all shared data. Throws Fault (not_understood) with every fault of every file that parses.
Pipeline read_pipeline(Disk& disk, const Path& folder);

/// Reads FOLDER/kit.yaml against the pipeline. Throws Fault (not_understood) with every fault of a manifest that
/// parses, a syntax error alone; marks name "kit.yaml". `inputs` gains kit/kit.yaml (artwork is hashed by who reads it).
Manifest read_manifest(Disk& disk, const Path& folder, const Pipeline& pipeline, std::vector<InputFile>& inputs);

}  // namespace qw::kit
