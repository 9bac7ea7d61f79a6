// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/rows.h"

#include <string>

namespace qw::artwork {

/// Passes rows on and takes a checksum of their samples on the way, so that the same picture packed otherwise is known
/// again: 64 bits (the CRC of ECMA-182), because it has to tell apart the pictures of one studio, not to withstand anyone.
class SampleDigest : public Rows {
public:
    explicit SampleDigest(Rows& to) : to_(to) {}
    void begin(const Form& form) override;
    void row(const std::uint8_t* samples) override;
    /// After the last row: hexadecimal, with what the samples are in front.
    std::string text() const;

private:
    Rows& to_;
    std::size_t row_bytes_ = 0;
    std::string form_;
    std::uint64_t sum_ = 0;
};

}  // namespace qw::artwork
