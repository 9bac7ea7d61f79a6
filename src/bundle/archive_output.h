// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "base/disk.h"

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace qw::bundle {

/// What libzip writes, on its way to the disk. libzip writes the local header of an entry (APPNOTE 4.3.7), then its
/// data, then goes back and writes the header again with the CRC; here small writes are gathered into large ones,
/// and going back becomes a patch, in the buffer while the header is still there, on the disk when it is not.
class ArchiveOutput {
public:
    ArchiveOutput(std::unique_ptr<Sink> sink, const Date& date);

    /// Writes at the place where the last write or `seek` left off.
    void write(std::span<const std::byte> bytes);
    /// To a place that was written already, or the end.
    void seek(std::uint64_t offset);
    std::uint64_t tell() const { return at_; }
    std::uint64_t end() const { return flushed_ + pending_.size(); }
    /// What is written from here on is an entry's data, not headers.
    void begin_data() { in_data_ = true; }
    void end_data() { in_data_ = false; }
    /// Everything to the disk, synced.
    void close();

private:
    void put(std::span<const std::byte> bytes);
    void append(std::span<const std::byte> bytes);
    void patch(std::span<const std::byte> bytes);
    void flush();

    std::unique_ptr<Sink> sink_;
    std::uint16_t date_;
    std::vector<std::byte> pending_;
    std::uint64_t flushed_ = 0, at_ = 0;
    bool in_data_ = false;
};

}  // namespace qw::bundle
