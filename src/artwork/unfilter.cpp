// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/unfilter.h"

#include <cstdlib>
#include <cstring>

#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace qw::artwork {

namespace {

#ifdef __SSE2__

// A pixel is loaded and stored as 4 or 8 bytes. What is stored too much is overwritten by the next pixel, or lies in
// the row's slack.
template <int Step>
__m128i load(const std::uint8_t* from) {
    if constexpr (Step <= 4) {
        int bytes;
        std::memcpy(&bytes, from, sizeof bytes);
        return _mm_cvtsi32_si128(bytes);
    } else {
        return _mm_loadl_epi64(reinterpret_cast<const __m128i*>(from));
    }
}

template <int Step>
void store(std::uint8_t* to, __m128i pixel) {
    if constexpr (Step <= 4) {
        const int bytes = _mm_cvtsi128_si32(pixel);
        std::memcpy(to, &bytes, sizeof bytes);
    } else {
        _mm_storel_epi64(reinterpret_cast<__m128i*>(to), pixel);
    }
}

template <int Step>
void undo_sub(const std::uint8_t* filtered, std::uint8_t* row, std::size_t bytes) {
    __m128i left = _mm_setzero_si128();
    for (std::size_t i = 0; i < bytes; i += Step) {
        left = _mm_add_epi8(left, load<Step>(filtered + i));
        store<Step>(row + i, left);
    }
}

void undo_up(const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row, std::size_t bytes) {
    for (std::size_t i = 0; i < bytes; i += 16) {
        const __m128i x = _mm_loadu_si128(reinterpret_cast<const __m128i*>(filtered + i));
        const __m128i b = _mm_loadu_si128(reinterpret_cast<const __m128i*>(above + i));
        _mm_storeu_si128(reinterpret_cast<__m128i*>(row + i), _mm_add_epi8(x, b));
    }
}

// The instruction for the mean rounds up. The mean of the complements, complemented, rounds down as PNG wants it, and
// keeping the complement of the left pixel leaves two instructions between one pixel and the next.
template <int Step>
void undo_average(const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row, std::size_t bytes) {
    const __m128i ones = _mm_set1_epi8(-1);
    __m128i not_left = ones;
    for (std::size_t i = 0; i < bytes; i += Step) {
        const __m128i not_above = _mm_xor_si128(load<Step>(above + i), ones);
        not_left = _mm_sub_epi8(_mm_avg_epu8(not_left, not_above), load<Step>(filtered + i));
        store<Step>(row + i, _mm_xor_si128(not_left, ones));
    }
}

// The predictor takes whichever of a (left), b (above), c (above left) is nearest to a + b − c. With t = 3c − a − b
// this is: the larger of a and b when t ≤ the smaller, the smaller when t ≥ the larger, else c. Written as c plus a
// difference, the way from one pixel to the next is five instructions long. When both conditions hold, a = b = c and
// both differences are zero.
template <int Step>
void undo_paeth(const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row, std::size_t bytes) {
    const __m128i zero = _mm_setzero_si128();
    __m128i a = zero, c = zero;  // 16 bits a sample
    for (std::size_t i = 0; i < bytes; i += Step) {
        const __m128i b = _mm_unpacklo_epi8(load<Step>(above + i), zero);
        const __m128i x = _mm_unpacklo_epi8(load<Step>(filtered + i), zero);
        const __m128i three_c_less_b = _mm_sub_epi16(_mm_add_epi16(c, _mm_add_epi16(c, c)), b);
        const __m128i t = _mm_sub_epi16(three_c_less_b, a);
        const __m128i low = _mm_min_epi16(a, b), high = _mm_max_epi16(a, b);
        const __m128i to_high = _mm_andnot_si128(_mm_cmpgt_epi16(t, low), _mm_sub_epi8(high, c));
        const __m128i to_low = _mm_andnot_si128(_mm_cmpgt_epi16(high, t), _mm_sub_epi8(low, c));
        a = _mm_add_epi8(_mm_add_epi8(x, c), _mm_add_epi8(to_high, to_low));
        c = b;
        store<Step>(row + i, _mm_packus_epi16(a, a));
    }
}

#else

template <int Step>
void undo_sub(const std::uint8_t* filtered, std::uint8_t* row, std::size_t bytes) {
    for (std::size_t i = 0; i < bytes; ++i)
        row[i] = static_cast<std::uint8_t>(filtered[i] + (i < Step ? 0 : row[i - Step]));
}

void undo_up(const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row, std::size_t bytes) {
    for (std::size_t i = 0; i < bytes; ++i) row[i] = static_cast<std::uint8_t>(filtered[i] + above[i]);
}

template <int Step>
void undo_average(const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row, std::size_t bytes) {
    for (std::size_t i = 0; i < bytes; ++i)
        row[i] = static_cast<std::uint8_t>(filtered[i] + ((i < Step ? 0 : row[i - Step]) + above[i]) / 2);
}

template <int Step>
void undo_paeth(const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row, std::size_t bytes) {
    for (std::size_t i = 0; i < bytes; ++i) {
        const int a = i < Step ? 0 : row[i - Step], b = above[i], c = i < Step ? 0 : above[i - Step];
        const int to_a = std::abs(b - c), to_b = std::abs(a - c), to_c = std::abs(a + b - 2 * c);
        const int nearest = to_a <= to_b && to_a <= to_c ? a : to_b <= to_c ? b : c;
        row[i] = static_cast<std::uint8_t>(filtered[i] + nearest);
    }
}

#endif

template <int Step>
bool unfilter_by(std::uint8_t type, const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row,
                 std::size_t bytes) {
    switch (type) {
        case 0: std::memcpy(row, filtered, bytes); return true;
        case 1: undo_sub<Step>(filtered, row, bytes); return true;
        case 2: undo_up(filtered, above, row, bytes); return true;
        case 3: undo_average<Step>(filtered, above, row, bytes); return true;
        case 4: undo_paeth<Step>(filtered, above, row, bytes); return true;
        default: return false;
    }
}

}  // namespace

bool unfilter(std::uint8_t type, const std::uint8_t* filtered, const std::uint8_t* above, std::uint8_t* row,
              std::size_t bytes, int step) {
    switch (step) {
        case 1: return unfilter_by<1>(type, filtered, above, row, bytes);
        case 2: return unfilter_by<2>(type, filtered, above, row, bytes);
        case 3: return unfilter_by<3>(type, filtered, above, row, bytes);
        case 4: return unfilter_by<4>(type, filtered, above, row, bytes);
        case 6: return unfilter_by<6>(type, filtered, above, row, bytes);
        default: return unfilter_by<8>(type, filtered, above, row, bytes);
    }
}

}  // namespace qw::artwork
