// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/jobs.h"
#include "record/release_record.h"
#include "release/judge.h"
#include "release/plan.h"

namespace qw::release {

struct DrawnFile {
    record::File record;                   ///< bundle left empty
    JudgedFile judged;
};

/// Draws every planned file below `folder` and judges it from outside. In the plan's order, whatever the jobs.
std::vector<DrawnFile> draw_and_prove(Disk& disk, const Path& folder, const Plan& plan, const checks::Rules& rules, const type::Fonts& fonts,
                                      engine::Kept& kept, Rendering rendering, const engine::Jobs& jobs, Progress& progress);

}  // namespace qw::release
