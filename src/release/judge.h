// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/palette_rules.h"
#include "checks/pdf_rules.h"
#include "engine/kept.h"
#include "release/rendered_pages.h"
#include "report/audit_report.h"

#include <string>
#include <vector>

namespace qw::release {

/// A finished PDF as it was judged from outside.
struct JudgedFile {
    std::string path;                        ///< inside the bundle
    proof::FileFacts facts;
    checks::SeenPdf seen;                    ///< as the rules saw it, but for `facts`, which is null here, and for the ink of its pages
    std::vector<report::SheetRow> rows;      ///< one a page
    std::vector<checks::PaletteSeen> palettes;  ///< of its pages that were rendered and show one piece of artwork
    Findings findings;
};

/// Holds the file at `disk_path` against the plan it was drawn from, or should have been.
JudgedFile judge_planned(Disk& disk, const Path& disk_path, const PlannedFile& file, const checks::Rules& rules, engine::Kept& kept, Rendering rendering);

/// Judges a file whose plan is not known, every page; `told` is what is known of it, with its path, and without facts and
/// renderings.
JudgedFile judge_unplanned(Disk& disk, const Path& disk_path, checks::SeenPdf told, const checks::Rules& rules, engine::Kept& kept);

/// What only all files of a release together tell.
void judge_together(const std::vector<const JudgedFile*>& files, const checks::Rules& rules, Findings& findings);

}  // namespace qw::release
