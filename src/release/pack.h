// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/record_rules.h"
#include "record/release_record.h"
#include "release/read.h"

#include <optional>
#include <vector>

namespace qw::release {

/// A bundle as it is on disk, everything read back. `shown` is what findings call it; `whole` is its digest as it was
/// written or read. Damage is told in the value.
checks::PackedBundle read_back(Disk& disk, const Path& path, const std::string& shown, const FileDigest& whole);

/// The same, with its PDFs taken out.
struct OpenedBundle {
    checks::PackedBundle packed;
    std::vector<std::optional<Path>> taken_out;  ///< beside `packed.content.entries`: where a PDF lies now
};
/// `folder` must exist and be empty; the files in it have names of ours. Which entries are PDFs their names tell.
OpenedBundle open_bundle(Disk& disk, const Path& path, const std::string& shown, const Path& folder);

/// Packs the record's files, which lie below `folder`, with contents.txt into one bundle there, completes the record
/// (files of contents.txt, bundles) and proves what was packed.
void pack(Disk& disk, const Path& folder, const ReadKit& kit, const checks::Rules& rules, record::ReleaseRecord& record, Findings& findings);

}  // namespace qw::release
