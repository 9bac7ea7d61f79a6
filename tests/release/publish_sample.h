// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "support/fault_disk.h"

#include <map>
#include <string>

namespace qw::release::sample {

/// Relative path → SHA-256 of everything below a folder; folders as "path/" → "". Empty when it is not there.
using Digests = std::map<std::string, std::string>;
Digests digests_of(const Path& folder);

/// What the releases of the tests hold.
enum class Edition { old, anew };
/// Writes one through the disk, as a release does: folders, files, a link to a kept file.
void fill(Disk& disk, const Path& staging, Edition edition);

/// `out` with a store to link from, and mini 1.0.0 in the old edition unless `first`; and the digests that may be seen.
struct House {
    explicit House(bool first);
    Path out() const { return folder / "dist"; }
    Path shown() const { return out() / "mini" / "1.0.0"; }
    /// The whole job of publishing the new edition.
    void publish_anew(Disk& disk) const;
    /// True if the old release (or none, when there was none) or the new one is there, whole.
    bool whole() const;
    bool is_new() const { return digests_of(shown()) == anew; }
    /// Names in the kit's folder that should not be there after a run that ended by itself.
    std::string leftovers() const;

    test::TestFolder folder;
    Digests before, anew;
};

}  // namespace qw::release::sample
