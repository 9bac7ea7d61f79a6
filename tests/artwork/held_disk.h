// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace qw::artwork::test {

using Bytes = std::vector<std::byte>;

/// One file in memory under every path; only reading works.
class HeldDisk : public Disk {
public:
    explicit HeldDisk(Bytes content) : bytes(std::move(content)) {}

    Bytes bytes;
    std::size_t most_at_once = SIZE_MAX;            ///< a Source may give less than it was asked for
    std::uint64_t fails_from = UINT64_MAX;          ///< reading at or beyond throws a Fault
    std::optional<std::uint64_t> said_size;         ///< in place of the true one
    std::uint64_t bytes_read = 0;                   ///< in all

    std::unique_ptr<Source> open(const Path& path) override;
    std::optional<FileStat> stat(const Path& path) override;
    std::vector<std::string> list(const Path& folder) override;
    std::unique_ptr<Sink> create(const Path& path) override;
    std::unique_ptr<Sink> extend(const Path& path, std::uint64_t length) override;
    void make_folders(const Path& path) override;
    void link(const Path& from, const Path& to) override;
    bool clone(const Path& from, const Path& to) override;
    void seal(const Path& path) override;
    void rename(const Path& from, const Path& to) override;
    void exchange(const Path& a, const Path& b) override;
    void remove(const Path& path) override;
    void sync_folder(const Path& path) override;
    std::unique_ptr<Lock> lock(const Path& path) override;
};

}  // namespace qw::artwork::test
