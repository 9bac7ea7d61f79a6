// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <memory>
#include <string>

namespace qw::release {

/// Where a release is put together before anyone can see it, and the one step that shows it. All of it happens in
/// `out`/<kit>/, so in one file system: the new release grows in the folder `.new-<version>` beside <version>, and
/// `publish` exchanges the two. A run that is killed at any point leaves the old release or the new one whole, and
/// perhaps a `.new-…` folder, which the next run removes. One writer at a time: `.lock` is held from beginning to end.
class Publication {
public:
    /// Throws Fault (not_carried_out) before any work when another run holds the lock (code "in-use"), when this file
    /// system cannot exchange two folders ("no-exchange"), or when something that is no folder has the release's name.
    /// Folders stay hidden until `publish`; `disk` must live longer.
    Publication(Disk& disk, const Path& out, const std::string& kit, const std::string& version);
    /// Removes the staging folder, if it was not published.
    ~Publication();
    Publication(const Publication&) = delete;
    Publication& operator=(const Publication&) = delete;

    /// An empty folder to put the release into. Files must have been closed (and so synced), or be links to such.
    const Path& staging() const { return staging_; }
    /// `out`/<kit>/<version>, where it will be seen.
    const Path& folder() const { return folder_; }

    /// Syncs, shows the new release in one step, and removes the old one. To be called once. When it throws Fault
    /// before that step, the old release is as it was; after it, the new one is there, but may not survive a power cut.
    void publish();

private:
    void remove_leftovers();
    void check_exchange();

    Disk& disk_;
    Path out_, kit_folder_, folder_, staging_;
    std::unique_ptr<Lock> lock_;
    bool shown_ = false;
};

}  // namespace qw::release
