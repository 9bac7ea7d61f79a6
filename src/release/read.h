// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"
#include "release/order.h"

#include <memory>
#include <vector>

namespace qw::release {

/// A kit as it was read: its manifest against the shared data.
struct ReadKit {
    std::shared_ptr<const kit::Pipeline> pipeline;
    kit::Manifest manifest;
    std::shared_ptr<const kit::JournalTemplate> journal;  ///< the kit's template with its choices made
    const kit::Printer* printer = nullptr;  ///< the order's or the kit's; belongs to the pipeline
    std::vector<kit::InputFile> inputs;     ///< kit.yaml and the pipeline's files; artwork is added by who reads it
    Date date;                              ///< SOURCE_DATE_EPOCH, else the kit's own, else 1980-01-01
};

/// Throws Fault (not_understood) with every fault of what was written.
ReadKit read(Disk& disk, const Order& order);

}  // namespace qw::release
