// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/paper.h"
#include "checks/bundle_rules.h"
#include "proof/file_facts.h"
#include "record/release_record.h"

#include <string>
#include <vector>

namespace qw::checks {

/// Bundles against the record that goes with them: nothing missing, nothing that it does not name, the same sizes and digests.
void check_record(const Rules& rules, const record::ReleaseRecord& record, const std::vector<PackedBundle>& bundles, Findings& findings);

/// What the record says of its files against their own paths (`letter/borderless/pages.pdf`), and of itself: a kit and version
/// against the names of its bundles.
void check_record_itself(const Rules& rules, const record::ReleaseRecord& record, const std::vector<Paper>& papers, Findings& findings);

/// What lies in the release's folder beside the record: PDFs and zips that it does not name. `loose`: paths below the folder.
void check_loose_files(const Rules& rules, const record::ReleaseRecord& record, const std::vector<std::string>& loose, Findings& findings);

/// A PDF of the release against what the record says of it: how many pages it has.
void check_recorded_pdf(const Rules& rules, const record::File& told, const proof::FileFacts& facts, Findings& findings);

/// The version that the PDFs tell in their Subject: that a single one differs from the rest the rule on editions says, that all
/// differ from the record this one. `subjects`: those that are not empty.
void check_recorded_version(const Rules& rules, const record::ReleaseRecord& record, const std::vector<std::string>& subjects, Findings& findings);

}  // namespace qw::checks
