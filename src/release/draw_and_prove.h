// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/jobs.h"
#include "record/release_record.h"
#include "release/plan.h"
#include "report/audit_report.h"

namespace qw::release {

/// Which pages are rendered. A page that is one passed-through picture is proven by structure in every edition: the
/// stream's digest is the artwork's, its matrix and clip are the plan's. Rendering is what costs, so a release renders
/// of each such set the first, the last and the darkest page; an audit renders all.
enum class Rendering { samples, all };

struct DrawnFile {
    record::File record;                   ///< bundle left empty
    std::vector<report::SheetRow> rows;    ///< one a page
    Findings findings;
};

/// Draws every planned file below `folder` and judges it from outside. In the plan's order, whatever the jobs.
std::vector<DrawnFile> draw_and_prove(Disk& disk, const Path& folder, const Plan& plan, const checks::Rules& rules, const type::Fonts& fonts,
                                      Rendering rendering, const engine::Jobs& jobs, Progress& progress);

}  // namespace qw::release
