// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/scratch.h"

#include <algorithm>

namespace qw::artwork {

namespace {

// Whole pictures are not kept: memory must follow the picture at hand, not the largest one ever seen.
constexpr std::size_t largest_kept = std::size_t{4} << 20;
constexpr std::size_t most_kept = 12;

std::vector<std::vector<std::uint8_t>>& shelf() {
    thread_local std::vector<std::vector<std::uint8_t>> kept;
    return kept;
}

/// The smallest that is large enough, else the largest, which then grows.
std::vector<std::uint8_t> taken(std::size_t bytes) {
    auto& kept = shelf();
    if (kept.empty()) return {};
    auto best = kept.begin();
    for (auto it = kept.begin(); it != kept.end(); ++it) {
        const bool fits = it->size() >= bytes, best_fits = best->size() >= bytes;
        if (fits != best_fits ? fits : (fits ? it->size() < best->size() : it->size() > best->size())) best = it;
    }
    std::vector<std::uint8_t> buffer = std::move(*best);
    kept.erase(best);
    return buffer;
}

}  // namespace

Scratch::Scratch(std::size_t bytes) : bytes_(taken(bytes)), size_(bytes) {
    if (bytes_.size() < bytes) {
        bytes_.clear();  // nothing to carry over when it has to move
        bytes_.resize(bytes);
    }
}

Scratch::~Scratch() {
    auto& kept = shelf();
    if (bytes_.size() > largest_kept || kept.size() >= most_kept) return;
    try {
        kept.push_back(std::move(bytes_));
    } catch (...) {  // then it is simply freed
    }
}

}  // namespace qw::artwork
