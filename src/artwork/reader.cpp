// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/reader.h"

#include <algorithm>
#include <cstring>

namespace qw::artwork {

namespace {
// Small enough to be still in the cache when it is hashed and inflated, large enough for few system calls.
constexpr std::size_t block_bytes = std::size_t{256} << 10;
}  // namespace

Reader::Reader(Source& source) : source_(source), block_(block_bytes) {}

bool Reader::load() {
    std::size_t n = 0;
    while (n < block_.size()) {
        const std::size_t more = source_.read(loaded_ + n, block_.bytes().subspan(n));
        if (more == 0) break;
        n += more;
    }
    digest_.add(block_.bytes().first(n));
    loaded_ += n;
    next_ = 0;
    end_ = n;
    return n > 0;
}

std::span<const std::byte> Reader::some(std::size_t most) {
    if (next_ == end_ && !load()) return {};
    const std::size_t n = std::min(most, end_ - next_);
    const std::span<const std::byte> piece = block_.bytes().subspan(next_, n);
    next_ += n;
    return piece;
}

std::span<const std::byte> Reader::peek(std::size_t most) {
    if (next_ == end_ && !load()) return {};
    return block_.bytes().subspan(next_, std::min(most, end_ - next_));
}

bool Reader::fill(std::span<std::byte> bytes) {
    while (!bytes.empty()) {
        const auto piece = some(bytes.size());
        if (piece.empty()) return false;
        std::memcpy(bytes.data(), piece.data(), piece.size());
        bytes = bytes.subspan(piece.size());
    }
    return true;
}

void Reader::drain() {
    while (load()) {
    }
}

}  // namespace qw::artwork
