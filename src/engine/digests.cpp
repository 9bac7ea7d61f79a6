// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/digests.h"

#include "base/digest.h"
#include "base/fault.h"

#include <algorithm>
#include <utility>

namespace qw::engine {

namespace {

constexpr int hash_attempts = 3;  // own limit: who writes for longer than this is still at work

/// The stamp may be older than the change by the grain of the file system's clock. Stamps of whole seconds come from one that
/// keeps no fractions; FAT keeps every second second (Microsoft, "File Times": last write time has a resolution of 2 seconds).
bool is_racy(const Stamp& stamp, std::int64_t hashing_began) {
    constexpr std::int64_t second = 1'000'000'000;
    const auto latest = [](std::int64_t time) { return time % second == 0 ? time + 2 * second : time; };
    return std::max(latest(stamp.mtime), latest(stamp.ctime)) >= hashing_began;
}

}  // namespace

Digests::Digests(Disk& disk, Trust trust, Place place) : disk_(disk), trust_(trust), place_(std::move(place)) {}

void Digests::believe(const std::vector<StatLine>& lines) {
    const std::lock_guard lock(mutex_);
    known_.reserve(known_.size() + lines.size());
    for (const StatLine& line : lines) {
        if (line.sha256.empty()) known_.erase(line.name);
        else known_.insert_or_assign(line.name, Known{line.stamp, line.sha256});
    }
}

std::optional<FileDigest> Digests::file(const std::string& name) {
    Slot& mine = slot(name);
    const std::lock_guard lock(mine.mutex);
    if (mine.file_asked) return mine.digest;
    const Path path = place(name);
    mine.stamp = stamp_of(path);
    if (mine.stamp) {
        const auto before = known(name);
        if (trust_ == Trust::stamps && before && before->stamp == *mine.stamp) mine.digest = FileDigest{before->stamp.size, before->sha256};
        else hash(mine, name, path, before);
    }
    mine.file_asked = true;
    return mine.digest;
}

std::optional<Digests::Listing> Digests::folder(const std::string& name) {
    Slot& mine = slot(name);
    const std::lock_guard lock(mine.mutex);
    if (!mine.folder_asked) mine.listing = list(place(name));
    mine.folder_asked = true;
    return mine.listing;
}

bool Digests::still(const std::string& name) {
    Slot& mine = slot(name);
    const std::lock_guard lock(mine.mutex);
    const Path path = place(name);
    if (mine.file_asked && stamp_of(path) != mine.stamp) return false;
    if (!mine.folder_asked) return true;
    const auto now = list(path);
    return now.has_value() == mine.listing.has_value() && (!now || now->sha256 == mine.listing->sha256);
}

std::vector<StatLine> Digests::learnt() {
    const std::lock_guard lock(mutex_);
    return std::exchange(learnt_, {});
}

Digests::Slot& Digests::slot(const std::string& name) {
    const std::lock_guard lock(mutex_);
    auto& found = slots_[name];
    if (!found) found = std::make_unique<Slot>();
    return *found;
}

std::optional<Stamp> Digests::stamp_of(const Path& path) const {
    auto there = disk_.stat(path);
    if (there && there->type == FileType::link) {
        const auto real = disk_.resolve(path);
        there = real ? disk_.stat(*real) : std::nullopt;
    }
    if (!there || there->type != FileType::file) return std::nullopt;
    return Stamp{there->size, there->inode, there->mtime, there->ctime};
}

std::optional<Digests::Listing> Digests::list(const Path& path) const {
    const auto real = disk_.resolve(path);
    const auto there = real ? disk_.stat(*real) : std::nullopt;
    if (!there || there->type != FileType::folder) return std::nullopt;
    Listing listing{disk_.list(*real), {}};
    Sha256 digest;
    for (const std::string& name : listing.names) digest.add(std::string_view(name.c_str(), name.size() + 1));
    listing.sha256 = digest.hex();
    return listing;
}

std::optional<Digests::Known> Digests::known(const std::string& name) {
    const std::lock_guard lock(mutex_);
    const auto found = known_.find(name);
    if (found == known_.end()) return std::nullopt;
    return found->second;
}

void Digests::hash(Slot& mine, const std::string& name, const Path& path, const std::optional<Known>& before) {
    for (int attempt = 0; attempt < hash_attempts; ++attempt) {
        const std::int64_t began = disk_.now();
        const auto first = stamp_of(path);
        if (!first) {  // it went away meanwhile
            mine.stamp.reset();
            return;
        }
        const FileDigest digest = digest_of(disk_, path);
        if (stamp_of(path) != first || digest.bytes != first->size) continue;
        mine.stamp = first;
        mine.digest = digest;
        return learn(name, *first, digest.sha256, is_racy(*first, began), before);
    }
    throw Fault(FaultKind::not_carried_out, {"changing-file", {name, 0, 0}, "the file changed while it was read, " + std::to_string(hash_attempts) + " times", "",
                                             "let the program that writes it come to its end, then run this again"});
}

void Digests::learn(const std::string& name, const Stamp& stamp, const std::string& sha256, bool racy, const std::optional<Known>& before) {
    const bool was_known = before && before->stamp == stamp;
    if (racy ? !was_known : was_known && before->sha256 == sha256) return;
    const std::lock_guard lock(mutex_);
    learnt_.push_back({name, stamp, racy ? "" : sha256});
}

}  // namespace qw::engine
