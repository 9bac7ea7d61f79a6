// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "kit/pipeline.h"
#include "record/release_record.h"

#include <map>
#include <string>
#include <vector>

namespace qw::checks {

/// One file inside a bundle as it was read back.
struct PackedFile {
    std::string name, sha256;
    std::uint64_t bytes = 0;
    std::string name_fault;  ///< why the name is not safe on every system; empty: it is
};

/// A bundle as it was read back.
struct PackedBundle {
    std::string path, damage, sha256;
    std::uint64_t bytes = 0;
    std::vector<PackedFile> files;
    std::string contents;    ///< contents.txt as it lies in the bundle; empty: there is none
};

/// A bundle by itself: readable, safe names, no doubles, contents.txt tells every other file by its right digest.
void check_bundle(const Rules& rules, const PackedBundle& bundle, Findings& findings);

/// Bundles against the record that goes with them: nothing missing, nothing extra, the same digests.
void check_record(const Rules& rules, const record::ReleaseRecord& record, const std::vector<PackedBundle>& bundles, Findings& findings);

/// What the shop accepts. No shop: nothing to say.
void check_shop(const Rules& rules, const kit::Shop* shop, const std::vector<PackedBundle>& bundles, Findings& findings);

}  // namespace qw::checks
