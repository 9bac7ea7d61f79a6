// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace qw::bundle {

/// One entry of a zip as its headers tell it (APPNOTE 4.3.7 local header, 4.3.12 central directory), nothing unpacked.
struct EntryHeader {
    std::string name;                  ///< its bytes as they are, zero bytes included
    std::uint16_t made_on = 0;         ///< 4.4.2, upper byte: 0 MS-DOS, 3 Unix, 19 macOS
    std::uint16_t flags = 0, method = 0, time = 0, date = 0;
    std::uint32_t crc = 0, attributes = 0;  ///< external attributes, 4.4.15: on Unix its mode in the upper half
    std::uint64_t packed = 0, size = 0;
    std::uint64_t offset = 0;          ///< of the local header, in the file
    std::uint64_t end = 0;             ///< where its last byte, or that of its data descriptor, has been
    bool zip64 = false;                ///< one of its headers has the extra field of ZIP64 (4.5.3)
    std::string unicode_name;          ///< that its extra field tells in UTF-8 (4.6.9, with the right CRC of `name`); empty: none
    std::string comment;
    std::string disagrees;             ///< in what local header or data descriptor differ from the directory; empty: in nothing

    /// What programs call it that read that extra field.
    const std::string& called() const { return unicode_name.empty() ? name : unicode_name; }
    bool is_folder() const { return !called().empty() && called().back() == '/'; }
    bool is_encrypted() const { return (flags & 0x2041) != 0 || method == 99; }  ///< bits 0, 6 and 13 (4.4.4), AE-x (4.4.5)
    bool has_descriptor() const { return (flags & 0x0008) != 0; }
    bool says_utf8() const { return (flags & 0x0800) != 0; }
    /// The type bits of a Unix mode, as S_IFMT cuts them out; 0 where the system that packed it has none.
    std::uint32_t unix_type() const { return made_on == 3 || made_on == 19 ? (attributes >> 16) & 0170000u : 0; }
};

/// Bytes of a zip that belong to no entry and to no directory.
struct StrayBytes {
    enum class Where { before, between, after } where = Where::before;
    std::uint64_t offset = 0, bytes = 0;
};

/// A zip's own structure: end record, directory and local headers, read strictly and without libzip, which passes over
/// much of it.
struct Structure {
    std::string damage;                ///< not empty: there is no directory that could be read, and why
    std::uint64_t begin = 0, end = 0;  ///< of the zip in the file: what lies around it is among `stray`
    bool zip64 = false;                ///< it has the end record of ZIP64 (4.3.14)
    std::string comment;
    std::vector<EntryHeader> entries;  ///< in the directory's order
    std::vector<StrayBytes> stray;     ///< in the file's order
    /// Pairs of places in `entries` whose bytes overlap, each entry with the nearest before it; the same place twice: an
    /// entry that reaches into the directory.
    std::vector<std::pair<std::size_t, std::size_t>> overlaps;
};

/// Never fails on bytes of whatever kind; a disk that cannot be read is a Fault. Memory: the directory, of which it reads
/// 64 MiB and 1 000 000 entries at most.
Structure read_structure(Disk& disk, const Path& path);

}  // namespace qw::bundle
