// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/scratch.h"
#include "base/digest.h"
#include "base/disk.h"

namespace qw::artwork {

/// Reads a file from front to back, once, and hashes every byte on the way.
class Reader {
public:
    explicit Reader(Source& source);

    /// What the disk says; a file may turn out shorter or longer while it is read.
    std::uint64_t size() const { return source_.size(); }
    /// Offset of the next byte.
    std::uint64_t at() const { return loaded_ - (end_ - next_); }
    /// 1 to `most` bytes, valid until the next call; none at the end. Throws Fault when the disk fails.
    std::span<const std::byte> some(std::size_t most);
    /// The next bytes without passing them; at least `most` of them at the start of a file that has so many.
    std::span<const std::byte> peek(std::size_t most);
    /// Copies; true when all could be filled.
    bool fill(std::span<std::byte> bytes);
    /// Reads on to the end, so that the digest is that of the whole file.
    void drain();
    /// Of what has been loaded: the whole file after `drain`.
    std::uint64_t bytes() const { return loaded_; }
    std::string sha256() const { return digest_.hex(); }

private:
    bool load();

    Source& source_;
    Sha256 digest_;
    Scratch block_;
    std::uint64_t loaded_ = 0;
    std::size_t next_ = 0, end_ = 0;
};

}  // namespace qw::artwork
