// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "bundle/zip.h"
#include "checks/rules.h"
#include "kit/pipeline.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::checks {

/// A bundle as it was read back.
struct PackedBundle {
    std::string path, sha256;
    std::uint64_t bytes = 0;
    bundle::Content content;         ///< contents.txt is its text
    std::optional<Date> date = {};   ///< of the kit that it was packed from, where that is known
    bool recorded = false;           ///< a release.json of ours names it

    /// Made by this program, as far as can be told: recorded, or with a contents.txt of our form, or with the sheets that every
    /// bundle of ours has. It then has to keep what this program promises; of any other only what can be known is said.
    bool ours() const;
};

/// A bundle by itself. One of ours: safe names, no doubles, contents.txt tells every other file by its right digest. Any: whole,
/// its bytes, its names and what is in it (zip_rules.h).
void check_bundle(const Rules& rules, const PackedBundle& bundle, Findings& findings);

/// What the shop accepts. No shop: nothing to say.
void check_shop(const Rules& rules, const kit::Shop* shop, const std::vector<PackedBundle>& bundles, Findings& findings);

}  // namespace qw::checks
