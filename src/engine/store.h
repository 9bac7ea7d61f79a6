// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstddef>
#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_set>
#include <vector>

namespace qw::engine {

/// Made files and kept inputs by their digest, in one folder (src/engine/store.md): each is read-only and whole, whenever a run
/// is killed. Safe for several jobs at once; that only one run writes is seen to by who calls (Disk::lock).
class Store {
public:
    /// Writes nothing. `disk` must live longer.
    Store(Disk& disk, Path folder);

    /// Where the file of this digest lies, if it does. To be read only.
    Path path(const std::string& sha256) const;
    /// It is there with so many bytes; a stored file of another size is not trusted.
    bool has(const FileDigest& file) const;
    /// The same, and its bytes have this digest: reads all of it.
    bool is_sound(const FileDigest& file) const;
    /// `path` is another name of the stored file, so that nothing need be read to know its digest.
    bool is_linked(const FileDigest& file, const Path& path) const;

    /// A new name inside the store's folder for a file that is to be put; what is not put goes with the next run.
    Path scratch();
    /// Takes a closed file in: it is moved, so it must lie in the store's file system (`scratch`).
    FileDigest put(const Path& file);
    /// Takes in a copy of a file that someone may change later; it shares the original's blocks where the file system can.
    FileDigest put_copy(const Path& file);
    /// A new name for a stored file: a hard link, where links do not work a copy. Throws Fault ("damaged-store") when it is not
    /// there in the right size. An existing `to` is a fault; a killed run may leave part of a copy there.
    void take(const FileDigest& file, const Path& to);
    /// Notes that this run needs it, which makes it one of the last to be cleaned away.
    void use(const std::string& sha256);
    /// Writes down what was used, unless nothing was put or taken. Throws Fault.
    void save();

    struct Pin {
        std::string name;
        std::vector<FileDigest> files;  ///< sorted by digest
        std::uint64_t bytes = 0;        ///< of all of them, also those that other pins name
    };
    /// Keeps these files for good; a pin of the same name is replaced. All are on the disk for certain when this returns. Throws
    /// Fault when one is not in the store, or the name is no plain file name.
    void pin(const std::string& name, std::vector<FileDigest> files);
    void unpin(const std::string& name);
    /// Sorted by name. Throws Fault for a damaged pin ("damaged-store") and one of a newer version ("newer-store").
    std::vector<Pin> pins() const;

    /// Each stored file counts once, in the first place that holds it.
    struct Sizes {
        std::uint64_t pinned = 0;   ///< bytes that pins hold
        std::uint64_t linked = 0;   ///< bytes with another name elsewhere, which cost nothing here
        std::uint64_t own = 0;      ///< all other bytes
        std::uint64_t removed = 0;  ///< bytes that were cleaned away
        std::size_t files_removed = 0;
    };
    Sizes sizes() const;
    /// Removes what neither is pinned nor has another name, what was not used for longest first, until `own` is at most `limit`
    /// bytes; and what killed runs left. Throws Fault before anything is removed when a pin cannot be read.
    Sizes clean_up(std::uint64_t limit);
    /// Digests of stored files whose bytes are others; reads everything.
    std::vector<std::string> damaged() const;
    void remove(const std::string& sha256);

private:
    struct Stored {
        std::string sha256;
        FileStat stat;
    };
    std::vector<Stored> stored() const;
    Sizes sorted_out(std::vector<Stored>& removable) const;
    Path scratch_folder() const { return folder_ / "new"; }
    void forget_leftovers();
    void note(const std::string& sha256, bool changed);
    void bring_uses_up_to_date();

    Disk& disk_;
    Path folder_;
    std::mutex mutex_;
    std::uint64_t scratches_ = 0;
    bool scratch_ready_ = false, changed_ = false;
    std::unordered_set<std::string> used_;       ///< by this run, and not yet in `uses_`
    std::uint64_t run_ = 0;                      ///< 0: the uses of earlier runs were not needed so far
    std::map<std::string, std::uint64_t> uses_;  ///< digest: the last run that used it
};

}  // namespace qw::engine
