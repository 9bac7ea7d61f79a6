// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "base/disk.h"
#include "bundle/structure.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace qw::bundle {

/// One file of a bundle: a path inside the zip and where its bytes are.
struct Entry {
    std::string name;  ///< a–z 0–9 - _ . and / only, at most 180 bytes, relative, no empty, dot or reserved parts
    Path file;         ///< on the disk that is handed in
    bool stored = true;  ///< true: as it is (already compressed); false: deflate
};

/// Why a name cannot be an entry's name on every system, or "" (ZIP APPNOTE 4.4.17: relative, forward slashes;
/// Microsoft "Naming files": reserved device names, no trailing dot or space).
std::string fault_in_name(const std::string& name);

/// Why a name of a bundle that others made is refused or changed by some system, or "" (base/words.h): a looser rule than
/// ours, which is a custom.
std::string fault_elsewhere(const std::string& name);

/// Why a name leads out of the folder that a bundle is unpacked to, or "": absolute, with a drive, or climbing by ".."
/// (APPNOTE 4.4.17.1). A backslash counts as a slash, as Windows takes it.
std::string escape_in_name(const std::string& name);

struct Written {
    std::uint64_t bytes = 0;
    std::string sha256;
};

/// Writes a zip at `path` (a new file) through the disk, entries in the given order, with one date, zone-free, the
/// same attributes for all, so that the same inputs give the same bytes. Names are checked, as are doubles that
/// differ in case only; a file whose length changes while it is packed is a Fault. So is what needs ZIP64, which old
/// unzip programs cannot open: more than 65,534 entries, or files of 4 GiB and more all together (APPNOTE 4.4.1.4).
/// On any failure no file is left at `path`.
Written write_zip(Disk& disk, const Path& path, const std::vector<Entry>& entries, const Date& date);

/// What a zip holds, read back with every byte inflated and its CRC checked. Names are told as they are, however
/// hostile. An entry that is encrypted, or packed by other methods than stored and deflate, is told as not read, and the rest is
/// read. What would inflate beyond measure (an entry to more than 2 GiB, all of them to more than 200 times their size and
/// 64 MiB) is not unpacked at all. Whether the headers agree with each other the structure tells. A disk that cannot be read
/// is a Fault.
struct Seen {
    std::string name;
    std::uint64_t bytes = 0;
    std::string sha256;
    bool stored = false;
    std::string unread;  ///< not empty: its bytes were not read, and why; size and digest are then not known
    std::string begins;  ///< its first bytes (bundle/kinds.h)
};
struct Content {
    std::string damage;    ///< not empty: it cannot be read as a zip, or an entry is damaged, and which
    std::string inflates;  ///< not empty: it would inflate beyond measure, and was not unpacked
    std::vector<Seen> entries;  ///< beside the structure's; fewer where there is damage
    std::string text;      ///< the wanted entry's bytes, at most 1 MiB of them; empty: there is none
    Structure structure;
    bool is_whole() const { return damage.empty() && inflates.empty(); }
};
/// `wanted` names one entry, a list of contents say, whose bytes are kept while everything is read.
Content read_zip(Disk& disk, const Path& path, const std::string& wanted = "");

/// The same, and the bytes of each entry for which `put_at` gives a path are written there, a new file. The caller makes up
/// those paths: an entry's own name may be anything. A file whose entry turns out to be damaged is left as far as it came.
using PutAt = std::function<std::optional<Path>(const std::string& name, std::size_t index)>;
Content unpack_zip(Disk& disk, const Path& path, const std::string& wanted, const PutAt& put_at);

}  // namespace qw::bundle
