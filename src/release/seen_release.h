// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "release/judge.h"
#include "release/order.h"
#include "release/pack.h"

#include <vector>

namespace qw::release {

/// What is known of a file of a bundle without its kit: from the record where there is one, else from the path where it
/// has the form `letter/borderless/…`.
checks::SeenPdf told_by_record(const record::File& file, const std::vector<Paper>& papers);
checks::SeenPdf told_by_path(const std::string& path, const std::vector<Paper>& papers);

/// release.json that cannot be read is a finding: damage of what is under judgement.
Finding damaged_record(const Fault& fault);

/// The bundles that a record tells of, opened below `scratch`, judged by themselves and against the record, with the loose
/// files of the release. `date` of the kit where it is known.
std::vector<OpenedBundle> open_release(Disk& disk, const checks::Rules& rules, const record::ReleaseRecord& record, const std::vector<Paper>& papers,
                                       const std::optional<Date>& date, const Path& folder, const Path& scratch, Findings& findings);

/// A file of a bundle that was opened, and what is told of it.
struct FileInBundle {
    checks::SeenPdf told;
    Path on_disk;
    std::string sha256;
    std::optional<record::File> recorded;
};
/// The PDFs of opened bundles; `record` may be null. Of a bundle that is not ours a path says nothing. Of the cautions only
/// those are known to be needed that stand on every list.
std::vector<FileInBundle> pdfs_of(const std::vector<OpenedBundle>& bundles, const record::ReleaseRecord* record, const kit::Pipeline& pipeline);

/// Whether none of them is damaged: what is missing from one that is says nothing of the others.
bool all_whole(const std::vector<OpenedBundle>& bundles);

/// Judges them all without a plan, each by itself and, if they are the `whole` release, all together; rows and findings are
/// added to the report. `record` may be null.
void judge_bundles(Disk& disk, const std::vector<FileInBundle>& files, const record::ReleaseRecord* record, bool whole, const checks::Rules& rules,
                   engine::Kept& kept, const engine::Jobs& jobs, Progress& progress, report::AuditReport& report);

}  // namespace qw::release
