// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

/// The store's own two kinds of file: src/engine/store.md.
namespace qw::engine::store_files {

std::string text_of_pin(const std::vector<FileDigest>& files);
/// Throws Fault (not_carried_out): "newer-store", "damaged-store".
std::vector<FileDigest> read_pin(Disk& disk, const Path& file);

std::string text_of_uses(std::uint64_t run, const std::map<std::string, std::uint64_t>& uses);
/// The number of the last run. A file that is missing or damaged holds none, and only the order of cleaning away is lost; one of
/// a newer version is a fault as above.
std::uint64_t read_uses(Disk& disk, const Path& file, std::map<std::string, std::uint64_t>& uses);

}  // namespace qw::engine::store_files
