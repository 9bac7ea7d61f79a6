// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/digest.h"
#include "proof/libqpdf.h"

#include <span>

namespace qw::proof {

/// Takes the digest of what libqpdf pipes into it.
class HashPipe final : public Pipeline {
public:
    HashPipe() : Pipeline("sha256", nullptr) {}
    void write(unsigned char const* data, std::size_t size) override { hash.add(std::as_bytes(std::span(data, size))); }
    void finish() override {}
    Sha256 hash;
};

}  // namespace qw::proof
