// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/store.h"

#include "base/digest.h"
#include "base/fault.h"
#include "engine/store_files.h"

#include <algorithm>
#include <set>

namespace qw::engine {

namespace {

constexpr std::size_t folder_digits = 2, digest_digits = 64;

bool is_hex(std::string_view text, std::size_t digits) {
    return text.size() == digits && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

Fault not_stored(const Path& path, const std::string& what, const std::string& expected) {
    return Fault(FaultKind::not_carried_out, {"damaged-store", {path.string(), 0, 0}, what, expected, "remove the file; it is made again by the next run"});
}

/// The name becomes a file beside which another of the name with ".part" is written.
void check_pin_name(const std::string& name) {
    const bool plain = !name.empty() && name.front() != '.' && name.find('/') == std::string::npos && !name.ends_with(".part");
    if (!plain) throw Fault(FaultKind::not_carried_out, {"bad-name", {}, "'" + name + "' cannot be the name of a pin", "a plain file name", ""});
}

}  // namespace

Store::Store(Disk& disk, Path folder) : disk_(disk), folder_(std::move(folder)) {}

Path Store::path(const std::string& sha256) const {
    return folder_.native() + "/" + sha256.substr(0, folder_digits) + "/" + sha256.substr(std::min(folder_digits, sha256.size()));
}

bool Store::has(const FileDigest& file) const {
    if (!is_hex(file.sha256, digest_digits)) return false;
    const auto there = disk_.stat(path(file.sha256));
    return there && there->type == FileType::file && there->size == file.bytes;
}

bool Store::is_sound(const FileDigest& file) const { return has(file) && digest_of(disk_, path(file.sha256)).sha256 == file.sha256; }

bool Store::is_linked(const FileDigest& file, const Path& other) const {
    if (!has(file)) return false;
    const auto here = disk_.stat(path(file.sha256)), there = disk_.stat(other);
    return there && there->type == FileType::file && here->inode == there->inode && here->device == there->device;
}

void Store::forget_leftovers() {
    if (!scratch_ready_) disk_.remove(scratch_folder());
}

Path Store::scratch() {
    const std::lock_guard lock(mutex_);
    if (!scratch_ready_) {
        forget_leftovers();
        disk_.make_folders(scratch_folder());
        scratch_ready_ = true;
    }
    return scratch_folder() / std::to_string(scratches_++);
}

FileDigest Store::put(const Path& file) {
    const FileDigest digest = digest_of(disk_, file);
    const Path to = path(digest.sha256);
    // Bytes that are there already keep their other names; but they are looked at, for whoever writes to such a name changes them.
    if (is_sound(digest)) {
        disk_.remove(file);
    } else {
        disk_.make_folders(to.parent_path());
        disk_.seal(file);  // on the disk for certain before it has the name
        disk_.rename(file, to);
    }
    note(digest.sha256, true);
    return digest;
}

FileDigest Store::put_copy(const Path& file) {
    const Path copy = scratch();
    copy_file(disk_, file, copy);
    return put(copy);
}

void Store::take(const FileDigest& file, const Path& to) {
    const Path from = path(file.sha256);
    const auto there = disk_.stat(from);
    const std::string expected = std::to_string(file.bytes) + " bytes";
    if (!there) throw not_stored(from, "a stored file is missing", expected);
    if (!has(file)) throw not_stored(from, "a stored file has " + std::to_string(there->size) + " bytes", expected);
    try {
        disk_.link(from, to);
    } catch (const Fault&) {  // another file system, too many names: a copy tells what is really wrong
        copy_file(disk_, from, to);
        disk_.seal(to);
    }
    note(file.sha256, true);
}

void Store::use(const std::string& sha256) { note(sha256, false); }

void Store::note(const std::string& sha256, bool changed) {
    const std::lock_guard lock(mutex_);
    used_.insert(sha256);
    changed_ = changed_ || changed;
}

void Store::bring_uses_up_to_date() {
    if (run_ == 0) run_ = store_files::read_uses(disk_, folder_ / "uses", uses_) + 1;
    for (const std::string& sha256 : used_) uses_[sha256] = run_;
    used_.clear();
}

void Store::save() {
    const std::lock_guard lock(mutex_);
    if (!changed_) return;
    bring_uses_up_to_date();
    write_file(disk_, folder_ / "uses", store_files::text_of_uses(run_, uses_));
    changed_ = false;
}

void Store::pin(const std::string& name, std::vector<FileDigest> files) {
    check_pin_name(name);
    const auto digest_less = [](const FileDigest& a, const FileDigest& b) { return a.sha256 < b.sha256; };
    const auto same_digest = [](const FileDigest& a, const FileDigest& b) { return a.sha256 == b.sha256; };
    std::sort(files.begin(), files.end(), digest_less);
    files.erase(std::unique(files.begin(), files.end(), same_digest), files.end());
    std::set<Path> folders{folder_};
    for (const FileDigest& file : files) {
        if (!has(file)) throw not_stored(path(file.sha256), "a file that is to be kept for good is not in the store", std::to_string(file.bytes) + " bytes");
        folders.insert(path(file.sha256).parent_path());
    }
    disk_.make_folders(folder_ / "pins");
    for (const Path& folder : folders) disk_.sync_folder(folder);
    write_file(disk_, folder_ / "pins" / name, store_files::text_of_pin(files));
}

void Store::unpin(const std::string& name) {
    check_pin_name(name);
    disk_.remove(folder_ / "pins" / name);
}

std::vector<Store::Pin> Store::pins() const {
    std::vector<Pin> pins;
    const Path folder = folder_ / "pins";
    if (!disk_.stat(folder)) return pins;
    for (const std::string& name : disk_.list(folder)) {
        if (name.ends_with(".part")) continue;  // what a killed run left
        Pin pin{name, store_files::read_pin(disk_, folder / name), 0};
        for (const FileDigest& file : pin.files) pin.bytes += file.bytes;
        pins.push_back(std::move(pin));
    }
    return pins;
}

std::vector<Store::Stored> Store::stored() const {
    std::vector<Stored> files;
    if (!disk_.stat(folder_)) return files;
    for (const std::string& begin : disk_.list(folder_)) {
        if (!is_hex(begin, folder_digits)) continue;
        for (const std::string& rest : disk_.list(folder_ / begin)) {
            const auto stat = is_hex(rest, digest_digits - folder_digits) ? disk_.stat(folder_ / begin / rest) : std::nullopt;
            if (stat && stat->type == FileType::file) files.push_back({begin + rest, *stat});
        }
    }
    return files;
}

Store::Sizes Store::sorted_out(std::vector<Stored>& removable) const {
    std::set<std::string> pinned;
    for (const Pin& pin : pins())
        for (const FileDigest& file : pin.files) pinned.insert(file.sha256);
    Sizes sizes;
    for (Stored& file : stored()) {
        if (pinned.contains(file.sha256)) {
            sizes.pinned += file.stat.size;
        } else if (file.stat.links > 1) {
            sizes.linked += file.stat.size;
        } else {
            sizes.own += file.stat.size;
            removable.push_back(std::move(file));
        }
    }
    return sizes;
}

Store::Sizes Store::sizes() const {
    std::vector<Stored> removable;
    return sorted_out(removable);
}

Store::Sizes Store::clean_up(std::uint64_t limit) {
    const std::lock_guard lock(mutex_);
    std::vector<Stored> removable;
    Sizes sizes = sorted_out(removable);
    forget_leftovers();
    bring_uses_up_to_date();
    const auto last_use = [&](const Stored& file) {
        const auto found = uses_.find(file.sha256);
        return found == uses_.end() ? std::uint64_t{0} : found->second;
    };
    std::sort(removable.begin(), removable.end(), [&](const Stored& a, const Stored& b) {
        return std::pair(last_use(a), std::string_view(a.sha256)) < std::pair(last_use(b), std::string_view(b.sha256));
    });
    for (const Stored& file : removable) {
        if (sizes.own <= limit) break;
        disk_.remove(path(file.sha256));
        uses_.erase(file.sha256);
        changed_ = true;
        sizes.own -= file.stat.size;
        sizes.removed += file.stat.size;
        ++sizes.files_removed;
    }
    return sizes;
}

std::vector<std::string> Store::damaged() const {
    std::vector<std::string> digests;
    for (const Stored& file : stored())
        if (!is_sound({file.stat.size, file.sha256})) digests.push_back(file.sha256);
    return digests;
}

void Store::remove(const std::string& sha256) {
    if (!is_hex(sha256, digest_digits)) return;
    disk_.remove(path(sha256));
    const std::lock_guard lock(mutex_);
    used_.erase(sha256);
    uses_.erase(sha256);
}

}  // namespace qw::engine
