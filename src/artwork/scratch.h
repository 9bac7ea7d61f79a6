// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace qw::artwork {

/// Working memory on loan from the thread that asks for it; goes back when the loan ends and is lent again, because
/// fresh large buffers cost page faults that add up over a kit. What it holds at first is left over from before.
/// Must end on the thread that began it.
class Scratch {
public:
    explicit Scratch(std::size_t bytes);
    ~Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    std::uint8_t* data() { return bytes_.data(); }
    const std::uint8_t* data() const { return bytes_.data(); }
    std::size_t size() const { return size_; }
    void swap(Scratch& other) noexcept {
        bytes_.swap(other.bytes_);
        std::swap(size_, other.size_);
    }
    std::span<std::byte> bytes() { return std::as_writable_bytes(std::span(bytes_.data(), size_)); }

private:
    std::vector<std::uint8_t> bytes_;
    std::size_t size_;
};

}  // namespace qw::artwork
