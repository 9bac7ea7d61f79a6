// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "bundle/zip.h"
#include "support/fault_disk.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::bundle::sample {

inline constexpr Date date{2024, 2, 29};

/// Bytes that do not compress, the same in every run.
std::string noise(std::size_t size);
void put(const Path& path, const std::string& bytes);
std::string get(const Path& path);

/// Files of a small bundle in `folder`: stored and deflated, empty, and in folders.
std::vector<Entry> small(const Path& folder);

/// CRC-32 as ZIP has it (APPNOTE 4.4.7), bit by bit.
std::uint32_t crc32(const std::string& bytes);

/// One entry of a zip that no good program would write.
struct Odd {
    std::string name, data;
    std::uint16_t method = 0, flags = 0;
    std::uint32_t size = 0;  ///< that the headers claim; 0: the true one
    std::optional<std::uint32_t> crc = {};     ///< of the bytes when they are unpacked; without it, of `data`
    std::uint16_t time = 0, date = 0x21;       ///< midnight, 1980-01-01
    std::uint8_t made_on = 0;                  ///< 3: Unix
    std::uint32_t attributes = 0;
    std::string comment = {}, extra = {}, local_extra = {};
    std::string local_name = {};               ///< empty: the same
    std::uint32_t local_size = 0;              ///< 0: the same
    std::string behind = {};                   ///< behind the data
    bool unknown_before = false;               ///< zeros for CRC and sizes in the local header, as before a data descriptor
    std::optional<std::uint32_t> at = {};      ///< where the directory says it is; nothing is written there
    bool all_ones = false;                     ///< 0xffffffff for both sizes, as beside a field of ZIP64
};
/// What stands around them.
struct Around {
    std::string before, after, comment;
    bool backwards = false;                    ///< the directory, in the other order
};
/// The bytes of a zip with these entries, headers by hand.
std::string odd_zip(const std::vector<Odd>& entries, const Around& around = {});

/// `bytes` as deflate packs them without packing: one block of at most 65 535 (RFC 1951 3.2.4).
Odd deflated(const std::string& name, const std::string& bytes, std::uint16_t flags = 0);
/// The same entry with a data descriptor (APPNOTE 4.3.9), with or without its mark.
Odd with_descriptor(Odd entry, bool marked = true);
/// The extra field that tells a name in UTF-8 (APPNOTE 4.6.9).
std::string unicode_path(const std::string& name, const std::string& utf8);
std::string little(std::uint64_t value, int bytes);

}  // namespace qw::bundle::sample
