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

/// A kit up to the point where files are drawn. Holds what the plan points into, so it stays where it is.
struct Prepared {
    Prepared(Disk& disk, const Order& order, const ReadKit& kit, engine::Kept& kept, Progress& progress);
    Prepared(const Prepared&) = delete;
    Prepared& operator=(const Prepared&) = delete;

    const ReadKit& kit;
    checks::Rules rules;
    type::Fonts fonts;
    std::vector<LookedSet> looked;
    Plan plan;
    engine::Jobs jobs;                     ///< as many as the order and its memory allow
};

/// draw → prove → pack → prove the bundle, below `folder`. Nothing is packed once there is an error.
Made make(Disk& disk, const Order& order, const Prepared& prepared, engine::Kept& kept, const Path& folder, Rendering rendering, Progress& progress);

/// Worst first, within a level in the order in which they were found.
void order_findings(Findings& findings);

/// Where what was found out about a kit's files is kept between runs; nothing is kept where there is no such folder yet.
engine::Kept kept_of(Disk& disk, const Order& order, const std::string& kit, engine::Kept::Use use);

}  // namespace qw::release
