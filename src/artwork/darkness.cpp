// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/darkness.h"

#include <cstring>

#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace qw::artwork {

namespace {

#ifdef __SSE2__

/// 1000 × luma, rounded and divided by 8, of four RGB pixels that begin at `rgb`: 32 bits each. Reads 16 bytes.
__m128i eighths(const std::uint8_t* rgb) {
    const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(rgb));
    const __m128i first = _mm_unpacklo_epi32(bytes, _mm_srli_si128(bytes, 3));
    const __m128i last = _mm_unpacklo_epi32(_mm_srli_si128(bytes, 6), _mm_srli_si128(bytes, 9));
    const __m128i pixels = _mm_unpacklo_epi64(first, last);  // R G B and a byte that does not count, four times
    const __m128i low_bytes = _mm_set1_epi16(255);
    const __m128i red_blue = _mm_and_si128(pixels, low_bytes), green_other = _mm_srli_epi16(pixels, 8);
    const __m128i sum = _mm_add_epi32(_mm_madd_epi16(red_blue, _mm_set1_epi32(114 << 16 | 299)),
                                      _mm_madd_epi16(green_other, _mm_set1_epi32(587)));
    return _mm_srli_epi32(_mm_add_epi32(sum, _mm_set1_epi32(500)), 3);
}

/// 255 − value / 125 of eight numbers below 2^15: 33555 / 2^22 is above 1/125 by so little that no such number is
/// rounded otherwise.
__m128i darkness_of_eighths(__m128i a, __m128i b) {
    const __m128i value = _mm_packs_epi32(a, b);
    const __m128i luma = _mm_srli_epi16(_mm_mulhi_epu16(value, _mm_set1_epi16(static_cast<short>(33555))), 6);
    return _mm_sub_epi16(_mm_set1_epi16(255), luma);
}

std::size_t rgb_by_sixteen(const std::uint8_t* rgb, std::uint8_t* to, std::size_t pixels) {
    std::size_t i = 0;
    for (; i + 16 <= pixels; i += 16, rgb += 48) {
        const __m128i low = darkness_of_eighths(eighths(rgb), eighths(rgb + 12));
        const __m128i high = darkness_of_eighths(eighths(rgb + 24), eighths(rgb + 36));
        _mm_storeu_si128(reinterpret_cast<__m128i*>(to + i), _mm_packus_epi16(low, high));
    }
    return i;
}

#else

std::size_t rgb_by_sixteen(const std::uint8_t*, std::uint8_t*, std::size_t) { return 0; }

#endif

}  // namespace

std::uint8_t darkness_of(std::uint8_t red, std::uint8_t green, std::uint8_t blue) {
    return static_cast<std::uint8_t>(255 - (299 * red + 587 * green + 114 * blue + 500) / 1000);
}

void darkness_of_rgb(const std::uint8_t* rgb, std::uint8_t* to, std::size_t pixels) {
    for (std::size_t i = rgb_by_sixteen(rgb, to, pixels); i < pixels; ++i)
        to[i] = darkness_of(rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2]);
}

void darkness_of_grey(const std::uint8_t* grey, std::uint8_t* to, std::size_t pixels) {
    // Eight at a time: 255 − v turns every bit round.
    for (std::size_t i = 0; i < pixels; i += 8) {
        std::uint64_t eight;
        std::memcpy(&eight, grey + i, 8);
        eight = ~eight;
        std::memcpy(to + i, &eight, 8);
    }
}

}  // namespace qw::artwork
