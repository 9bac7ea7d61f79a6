// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/publish.h"

#include "base/fault.h"
#include "base/words.h"

namespace qw::release {

namespace {

constexpr const char* hidden = ".new-";

/// The names become folders that are exchanged and removed, so they must not lead anywhere else.
void check_names(const std::string& kit, const std::string& version) {
    const bool plain_version = !version.empty() && version.front() != '.' && version.find('/') == std::string::npos;
    if (is_plain_name(kit) && plain_version) return;
    throw Fault(FaultKind::not_carried_out, {"bad-name", {}, "'" + kit + "' with version '" + version + "' cannot be the name of a release's folder", "", ""});
}

void check_is_folder(Disk& disk, const Path& path) {
    const auto there = disk.stat(path);
    if (there && there->type != FileType::folder)
        throw Fault(FaultKind::not_carried_out,
                    {"not-a-folder", {path.string(), 0, 0}, "something that is no folder lies where the release belongs", "", "move it away"});
}

/// What cannot be removed now is removed by the next run; there is nothing better to do with the failure.
void try_to_remove(Disk& disk, const Path& path) noexcept {
    try {
        disk.remove(path);
    } catch (...) {
    }
}

/// A folder after all that is in it, so that no name is on the disk before what it stands for.
void sync_folders(Disk& disk, const Path& folder) {
    for (const std::string& name : disk.list(folder)) {
        const auto there = disk.stat(folder / name);
        if (there && there->type == FileType::folder) sync_folders(disk, folder / name);
    }
    disk.sync_folder(folder);
}

}  // namespace

Publication::Publication(Disk& disk, const Path& out, const std::string& kit, const std::string& version)
    : disk_(disk), out_(out.empty() ? Path(".") : out), kit_folder_(out_ / kit), folder_(kit_folder_ / version), staging_(kit_folder_ / (hidden + version)) {
    check_names(kit, version);
    disk_.make_folders(kit_folder_);
    lock_ = disk_.lock(kit_folder_ / ".lock");
    check_is_folder(disk_, folder_);
    remove_leftovers();
    try {
        disk_.make_folders(staging_);
        check_exchange();
    } catch (...) {
        try_to_remove(disk_, staging_);
        throw;
    }
}

Publication::~Publication() {
    if (!shown_) try_to_remove(disk_, staging_);
}

void Publication::remove_leftovers() {
    for (const std::string& name : disk_.list(kit_folder_))
        if (name.starts_with(hidden)) disk_.remove(kit_folder_ / name);
}

// Only a try tells whether a file system can do it; one that cannot would let a whole run go by before it failed.
void Publication::check_exchange() {
    const Path other = staging_.string() + ".try";
    disk_.make_folders(other);
    try {
        disk_.exchange(staging_, other);
    } catch (const Fault& fault) {
        try_to_remove(disk_, other);
        throw Fault(FaultKind::not_carried_out,
                    {"no-exchange", {kit_folder_.string(), 0, 0}, "this file system cannot exchange two folders in one step (" + fault.notes().front().what + ")",
                     "", "choose a folder on a local disk with --out"});
    }
    disk_.remove(other);
}

void Publication::publish() {
    sync_folders(disk_, staging_);
    const bool replaces = disk_.stat(folder_).has_value();
    if (replaces)
        disk_.exchange(staging_, folder_);
    else
        disk_.rename(staging_, folder_);
    shown_ = true;
    disk_.sync_folder(kit_folder_);
    disk_.sync_folder(out_);
    if (replaces) try_to_remove(disk_, staging_);  // only now is the old release no longer needed after a power cut
}

}  // namespace qw::release
