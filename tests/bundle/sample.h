// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "bundle/zip.h"
#include "support/fault_disk.h"

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
};
/// The bytes of a zip with these entries, headers by hand.
std::string odd_zip(const std::vector<Odd>& entries);

}  // namespace qw::bundle::sample
