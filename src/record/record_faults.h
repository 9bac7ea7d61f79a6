// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "record/release_record.h"

#include <string>

namespace qw::record {

/// What makes a record one that its format does not allow (src/record/release.md, "What must hold"), or "". Held by
/// the writer and the reader alike, so that nothing is written that could not be read.
std::string fault_in_record(const ReleaseRecord& record);

}  // namespace qw::record
