// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/sample_digest.h"

#include <isa-l/crc64.h>

#include <cstdio>

namespace qw::artwork {

void SampleDigest::begin(const Form& form) {
    row_bytes_ = std::size_t{form.width} * static_cast<unsigned>(form.components);
    form_ = std::to_string(form.width) + "x" + std::to_string(form.height) + "x" + std::to_string(form.components) + "t" + std::to_string(form.turn);
    sum_ = crc64_ecma_refl(0, form.palette.data(), form.palette.size());
    to_.begin(form);
}

void SampleDigest::row(const std::uint8_t* samples) {
    sum_ = crc64_ecma_refl(sum_, samples, row_bytes_);
    to_.row(samples);
}

std::string SampleDigest::text() const {
    char hex[17];
    std::snprintf(hex, sizeof hex, "%016llx", static_cast<unsigned long long>(sum_));
    return form_ + "-" + hex;
}

}  // namespace qw::artwork
