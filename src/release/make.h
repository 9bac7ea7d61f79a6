// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "record/release_record.h"
#include "release/draw_and_prove.h"
#include "release/read.h"
#include "report/audit_report.h"

namespace qw::release {

struct Made {
    report::AuditReport report;
    record::ReleaseRecord record;
};

/// look → plan → draw → prove → pack → prove the bundle, below `folder`. Nothing is packed once there is an error.
Made make(Disk& disk, const Order& order, const ReadKit& kit, const Path& folder, Rendering rendering, Progress& progress);

}  // namespace qw::release
