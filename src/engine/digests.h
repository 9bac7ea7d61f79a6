// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace qw::engine {

/// What tells, without reading it, that a file is as it was. The device is not part of it: its number may be another after the
/// machine was started anew.
struct Stamp {
    std::uint64_t size = 0, inode = 0;
    std::int64_t mtime = 0, ctime = 0;  ///< ns since 1970-01-01 UTC
    friend bool operator==(const Stamp&, const Stamp&) = default;
};

/// A digest with the stamp under which it may be believed; an empty digest takes back what was told of that file before.
struct StatLine {
    std::string name;
    Stamp stamp;
    std::string sha256;
    friend bool operator==(const StatLine&, const StatLine&) = default;
};

enum class Trust {
    stamps,  ///< a file whose stamp is a known one is not read again
    nothing  ///< every file is read once in a run
};

/// Digests of what one run reads, by name. Each name is looked at once in its life and then answered from memory; `still` looks
/// again. A link is followed: the stamp is that of the file it leads to. Safe for several jobs at once; a file that two ask for
/// is read by one.
class Digests {
public:
    using Place = std::function<Path(const std::string& name)>;
    struct Listing {
        std::vector<std::string> names;  ///< sorted bytewise
        std::string sha256;              ///< of the names, each ended by a zero byte
    };

    /// `place` tells where a name lies; without it a name is a path. `disk` must live longer.
    Digests(Disk& disk, Trust trust, Place place = {});

    Trust trust() const { return trust_; }
    Path place(const std::string& name) const { return place_ ? place_(name) : Path(name); }
    /// Takes over what an earlier run learnt; later lines go before earlier ones.
    void believe(const std::vector<StatLine>& lines);
    /// Nothing when no file is there. Throws Fault when it cannot be read, or ("changing-file") when it changed each of three
    /// times while it was read.
    std::optional<FileDigest> file(const std::string& name);
    /// Nothing when no folder is there. What lies in the folders inside it is not part of the digest.
    std::optional<Listing> folder(const std::string& name);
    /// Whether all that this run was told of `name` would be told again: looks at the disk again, reads no file.
    bool still(const std::string& name);
    /// What is to be remembered and was not known before; each line is handed out once. A file that is no older than the
    /// beginning of its own hashing may have changed since without a trace in its stamp, so it is hashed again next time.
    std::vector<StatLine> learnt();

private:
    struct Slot {
        std::mutex mutex;
        std::optional<Stamp> stamp;
        std::optional<FileDigest> digest;
        std::optional<Listing> listing;
        bool file_asked = false, folder_asked = false;
    };
    struct Known {
        Stamp stamp;
        std::string sha256;
    };

    Slot& slot(const std::string& name);
    std::optional<Stamp> stamp_of(const Path& path) const;
    std::optional<Listing> list(const Path& path) const;
    std::optional<Known> known(const std::string& name);
    /// Hashes until the stamp is the same before and after.
    void hash(Slot& slot, const std::string& name, const Path& path, const std::optional<Known>& before);
    void learn(const std::string& name, const Stamp& stamp, const std::string& sha256, bool racy, const std::optional<Known>& before);

    Disk& disk_;
    Trust trust_;
    Place place_;
    std::mutex mutex_;
    std::unordered_map<std::string, std::unique_ptr<Slot>> slots_;
    std::unordered_map<std::string, Known> known_;
    std::vector<StatLine> learnt_;
};

}  // namespace qw::engine
