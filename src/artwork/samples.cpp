// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/samples.h"

#include <cstring>
#include <limits>

namespace qw::artwork {

namespace {

std::uint8_t narrowed(std::uint32_t value) { return static_cast<std::uint8_t>((value * 255 + 32895) >> 16); }

// White minus what is missing from white: with c the sample, the result 255 − (255 − c)·a / 255 needs one rounded
// division, written as shifts, exact for every product.
std::uint8_t laid(std::uint32_t sample, std::uint32_t alpha) {
    const std::uint32_t product = (255 - sample) * alpha + 128;
    return static_cast<std::uint8_t>(255 - ((product + (product >> 8)) >> 8));
}

std::uint32_t laid16(std::uint32_t sample, std::uint32_t alpha) {
    return 65535 - ((65535 - sample) * alpha + 32767) / 65535;
}

/// For three colours: most pixels of a drawing are full or empty, and a copy of four bytes, of which the next pixel
/// overwrites the last, is the fastest way over them.
void lay_rgb_on_white(const std::uint8_t* from, std::uint8_t* to, std::size_t pixels) {
    for (std::size_t i = 0; i + 1 < pixels; ++i, from += 4, to += 3) {
        if (from[3] == 255) {
            std::memcpy(to, from, 4);
        } else if (from[3] == 0) {
            std::memset(to, 255, 4);
        } else {
            for (int c = 0; c < 3; ++c) to[c] = laid(from[c], from[3]);
        }
    }
    if (pixels > 0)
        for (int c = 0; c < 3; ++c) to[c] = laid(from[c], from[3]);
}

}  // namespace

void unpack_bits(const std::uint8_t* packed, std::uint8_t* to, std::size_t samples, int bits) {
    const unsigned mask = (1u << bits) - 1;
    const auto per_byte = static_cast<std::size_t>(8 / bits);
    for (std::size_t i = 0; i < samples; ++i) {
        const auto shift = 8 - static_cast<unsigned>(bits) * static_cast<unsigned>(i % per_byte + 1);
        to[i] = static_cast<std::uint8_t>(packed[i / per_byte] >> shift & mask);
    }
}

void swap_from_file(const std::uint8_t* from, std::uint16_t* to, std::size_t samples) {
    for (std::size_t i = 0; i < samples; ++i) to[i] = static_cast<std::uint16_t>(from[2 * i] << 8 | from[2 * i + 1]);
}

void narrow(const std::uint16_t* from, std::uint8_t* to, std::size_t samples) {
    for (std::size_t i = 0; i < samples; ++i) to[i] = narrowed(from[i]);
}

template <typename Sample>
void add_key_alpha(const Sample* from, Sample* to, std::size_t pixels, int colours, const std::uint16_t* key) {
    for (std::size_t i = 0; i < pixels; ++i, from += colours, to += colours + 1) {
        bool same = true;
        for (int c = 0; c < colours; ++c) {
            same = same && from[c] == key[c];
            to[c] = from[c];
        }
        to[colours] = same ? Sample{0} : std::numeric_limits<Sample>::max();
    }
}
template void add_key_alpha(const std::uint8_t*, std::uint8_t*, std::size_t, int, const std::uint16_t*);
template void add_key_alpha(const std::uint16_t*, std::uint16_t*, std::size_t, int, const std::uint16_t*);

void lay_on_white(const std::uint8_t* from, std::uint8_t* to, std::size_t pixels, int colours) {
    if (colours == 3) return lay_rgb_on_white(from, to, pixels);
    for (std::size_t i = 0; i < pixels; ++i) to[i] = laid(from[2 * i], from[2 * i + 1]);
}

void lay_on_white(const std::uint16_t* from, std::uint8_t* to, std::size_t pixels, int colours) {
    for (std::size_t i = 0; i < pixels; ++i, from += colours + 1, to += colours)
        for (int c = 0; c < colours; ++c) to[c] = narrowed(laid16(from[c], from[colours]));
}

std::uint8_t on_white(std::uint8_t sample, std::uint8_t alpha) { return laid(sample, alpha); }

}  // namespace qw::artwork
