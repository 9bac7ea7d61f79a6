// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/scratch.h"

struct inflate_state;

namespace qw::artwork {

/// Unpacks a zlib stream (RFC 1950) piece by piece with ISA-L; its check sum is verified. Throws Damage.
/// ISA-L takes one thing that zlib refuses: a distance code that leaves bit patterns unused. No known packer writes
/// such a code; what it unpacks to is still covered by the check sum.
class Inflate {
public:
    Inflate();

    /// Input; must stay in place until `take` has returned 0.
    void give(std::span<const std::byte> packed);
    /// Up to `most` unpacked bytes; 0 when more input is needed or the stream has ended.
    std::size_t take(std::uint8_t* to, std::size_t most);
    /// The stream has ended and its check sum was right.
    bool ended() const;
    /// Input that lies behind the end of the stream.
    std::size_t left_over() const;

private:
    Scratch memory_;
    inflate_state* state_;
};

}  // namespace qw::artwork
