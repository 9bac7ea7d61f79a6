// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace qw {

using Path = std::filesystem::path;

/// A file being written. What is not closed is not promised to be on disk.
class Sink {
public:
    virtual ~Sink() = default;
    /// Appends at the end. Throws Fault (not_carried_out), naming the file, when the disk refuses.
    virtual void write(std::span<const std::byte> bytes) = 0;
    /// Writes over bytes that were written before, for formats whose headers hold what is only known at their end;
    /// the end of the file stays where it is. Nothing beyond the end may be written. Throws as `write`.
    virtual void write_at(std::uint64_t offset, std::span<const std::byte> bytes) = 0;
    /// Syncs and closes; throws as `write`. Must be called exactly once for a file that is to be kept.
    virtual void close() = 0;

    void write(std::string_view text) { write(std::as_bytes(std::span(text.data(), text.size()))); }
};

/// A file being read at any place. Not safe for use by two threads at once.
class Source {
public:
    virtual ~Source() = default;
    virtual std::uint64_t size() const = 0;
    /// Reads up to bytes.size() from `offset`; returns how many there were, 0 at the end. Throws Fault.
    virtual std::size_t read(std::uint64_t offset, std::span<std::byte> bytes) = 0;
};

/// A place that is held against other runs until this is destroyed, or its process ends in whatever way.
class Lock {
public:
    virtual ~Lock() = default;
};

enum class FileType { file, folder, link, other };
struct FileStat {
    FileType type = FileType::other;
    std::uint64_t size = 0;
    std::uint64_t inode = 0, device = 0, links = 0;  ///< `links`: how many names the file has
    std::int64_t mtime = 0, ctime = 0;               ///< ns since 1970-01-01 UTC: last change of the bytes; of them, the names or the rights
};

/// Every touch of the file system goes through this, so that a test can fail a write, count the steps and stop
/// between any two of them. All functions throw Fault (not_carried_out) with the path and the system's reason.
class Disk {
public:
    virtual ~Disk() = default;

    // Reading.
    virtual std::unique_ptr<Source> open(const Path& path) = 0;
    /// Does not follow a link at the end of the path; nothing when there is no such file.
    virtual std::optional<FileStat> stat(const Path& path) = 0;
    /// The same place as an absolute path without links or "..", or nothing when it is not there: a link that leads
    /// nowhere, or in a circle, leads to nothing. What lies inside a folder is told by comparing two such paths.
    virtual std::optional<Path> resolve(const Path& path);
    /// Names in a folder, sorted bytewise.
    virtual std::vector<std::string> list(const Path& folder) = 0;
    /// A time, in ns since 1970-01-01 UTC, before which no later change is stamped: the kernel's coarse clock, which stands still
    /// between ticks as stamps do. A change of the last tick may already have a later stamp. Never reaches a file's bytes.
    virtual std::int64_t now();

    // Writing.
    /// A new file; an existing one is a fault.
    virtual std::unique_ptr<Sink> create(const Path& path) = 0;
    /// The file at `path`, made when missing, cut to its first `length` bytes and then written on from there. One that is
    /// shorter is a fault. What is not closed has been written, but is not promised to survive a power cut.
    virtual std::unique_ptr<Sink> extend(const Path& path, std::uint64_t length) = 0;
    virtual void make_folders(const Path& path) = 0;
    virtual void link(const Path& from, const Path& to) = 0;
    /// A new file that shares the blocks of `from` until one of them is changed (ioctl FICLONE); false, and no file, where the
    /// file system cannot. An existing `to` is a fault.
    virtual bool clone(const Path& from, const Path& to) = 0;
    /// Takes everyone's right to write from a file and syncs it.
    virtual void seal(const Path& path) = 0;
    virtual void rename(const Path& from, const Path& to) = 0;
    /// Exchanges two existing names in one step (renameat2, RENAME_EXCHANGE).
    virtual void exchange(const Path& a, const Path& b) = 0;
    /// Removes a file or a folder with all in it; nothing there is no fault.
    virtual void remove(const Path& path) = 0;
    virtual void sync_folder(const Path& path) = 0;
    /// Holds the file at `path`, made when missing and never removed (flock; a second holder, in this process too,
    /// is a fault with the code "in-use").
    virtual std::unique_ptr<Lock> lock(const Path& path) = 0;
};

/// The machine's own file system.
std::unique_ptr<Disk> real_disk();

/// The whole of a file; Fault when it is larger than `limit` bytes.
std::string read_text(Disk& disk, const Path& path, std::uint64_t limit);
/// Length and SHA-256 of a whole file, read in pieces.
struct FileDigest {
    std::uint64_t bytes = 0;
    std::string sha256;
};
FileDigest digest_of(Disk& disk, const Path& path);
/// A new file with the bytes of another, which share their blocks where the file system can; synced. An existing `to` is a
/// fault. A fault or a killed run may leave part of it.
void copy_file(Disk& disk, const Path& from, const Path& to);
/// Writes a file beside `path`, syncs, renames it to `path`, syncs the folder; leaves nothing behind on failure.
void write_file(Disk& disk, const Path& path, std::string_view text);
/// The same for what is written as it comes; `write` need not close.
void write_file(Disk& disk, const Path& path, const std::function<void(Sink&)>& write);

}  // namespace qw
