// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace qw {

/// SHA-256 (FIPS 180-4) over bytes as they come. Copyable: a copy goes on from the same state.
class Sha256 {
public:
    Sha256();
    Sha256(const Sha256& other);
    Sha256& operator=(const Sha256& other);
    Sha256(Sha256&&) noexcept;
    Sha256& operator=(Sha256&&) noexcept;
    ~Sha256();

    void add(std::span<const std::byte> bytes);
    void add(std::string_view text);
    /// 64 lower-case hexadecimal digits. Leaves the state as it was.
    std::string hex() const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

std::string sha256_of(std::string_view text);

}  // namespace qw
