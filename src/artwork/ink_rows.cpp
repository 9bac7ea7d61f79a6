// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/ink_rows.h"

#include "artwork/darkness.h"

#include <algorithm>
#include <cstring>

#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace qw::artwork {

namespace {

constexpr std::uint32_t most_cells = 225;
constexpr std::uint32_t most_band_rows = 256;  // 256 × 255 fits 16 bits
[[maybe_unused]] constexpr std::size_t block = 16;  // columns that are worked on at once

std::uint32_t cells(std::uint32_t pixels, std::uint32_t cell) { return pixels / cell + (pixels % cell != 0); }

#ifdef __SSE2__

std::uint8_t largest(__m128i bytes) {
    std::uint8_t each[16];
    _mm_storeu_si128(reinterpret_cast<__m128i*>(each), bytes);
    return *std::max_element(each, each + 16);
}

/// Adds a row to the column sums and maxima; returns the row's maximum. Whole blocks: the row ends in zeros.
std::uint8_t add_row(const std::uint8_t* dark, std::uint8_t* darkest, std::uint16_t* sums, std::size_t pixels) {
    const __m128i zero = _mm_setzero_si128();
    __m128i most = zero;
    for (std::size_t x = 0; x < pixels; x += block) {
        const __m128i row = _mm_loadu_si128(reinterpret_cast<const __m128i*>(dark + x));
        auto* const column_most = reinterpret_cast<__m128i*>(darkest + x);
        auto* const low = reinterpret_cast<__m128i*>(sums + x);
        auto* const high = reinterpret_cast<__m128i*>(sums + x + 8);
        most = _mm_max_epu8(most, row);
        _mm_storeu_si128(column_most, _mm_max_epu8(_mm_loadu_si128(column_most), row));
        _mm_storeu_si128(low, _mm_add_epi16(_mm_loadu_si128(low), _mm_unpacklo_epi8(row, zero)));
        _mm_storeu_si128(high, _mm_add_epi16(_mm_loadu_si128(high), _mm_unpackhi_epi8(row, zero)));
    }
    return largest(most);
}

#else

std::uint8_t add_row(const std::uint8_t* dark, std::uint8_t* darkest, std::uint16_t* sums, std::size_t pixels) {
    std::uint8_t most = 0;
    for (std::size_t x = 0; x < pixels; ++x) {
        most = std::max(most, dark[x]);
        darkest[x] = std::max(darkest[x], dark[x]);
        sums[x] = static_cast<std::uint16_t>(sums[x] + dark[x]);
    }
    return most;
}

#endif

}  // namespace

std::uint32_t cell_for(std::uint32_t width, std::uint32_t height) {
    std::uint32_t cell = 1;
    while (cells(std::max(width, height), cell) > most_cells) cell *= 2;
    return cell;
}

void InkRows::begin(const Form& form) {
    form_ = form;
    turn_ = Turn::of(form.turn);
    cell_ = cell_for(form.width, form.height);
    shift_x_ = turn_.mirror_x ? (cell_ - form.width % cell_) % cell_ : 0;
    shift_y_ = turn_.mirror_y ? (cell_ - form.height % cell_) % cell_ : 0;
    map_ = {cell_, cells(form.width, cell_), cells(form.height, cell_), {}, {}};
    map_.darkest.assign(std::size_t{map_.columns} * map_.rows, 0);
    map_.mean.assign(map_.darkest.size(), 0);
    cell_sums_.assign(map_.columns, 0);
    for (std::size_t i = 0; i * 3 < form.palette.size(); ++i)
        darkness_[i] = darkness_of(form.palette[3 * i], form.palette[3 * i + 1], form.palette[3 * i + 2]);
    const std::size_t padded = form.width + row_slack;
    dark_.emplace(padded);
    darkest_.emplace(padded);
    sums_.emplace(padded * sizeof(std::uint16_t));
    std::memset(darkest_->data(), 0, darkest_->size());
    std::memset(sums_->data(), 0, sums_->size());
    box_ = {form.width, form.height, 0, 0};
}

void InkRows::darken(const std::uint8_t* samples) {
    std::uint8_t* const dark = dark_->data();
    if (!form_.palette.empty())
        for (std::uint32_t x = 0; x < form_.width; ++x) dark[x] = darkness_[samples[x]];
    else if (form_.components == 1)
        darkness_of_grey(samples, dark, form_.width);
    else
        darkness_of_rgb(samples, dark, form_.width);
    std::memset(dark + form_.width, 0, row_slack);
}

void InkRows::row(const std::uint8_t* samples) {
    darken(samples);
    const std::uint8_t most = add_row(dark_->data(), darkest_->data(), reinterpret_cast<std::uint16_t*>(sums_->data()), form_.width);
    if (most >= ink_threshold) {
        box_.top = std::min(box_.top, y_);
        box_.bottom = y_ + 1;
    }
    ++band_rows_;
    ++y_;
    const bool cell_ends = (y_ + shift_y_) % cell_ == 0 || y_ == form_.height;
    if (cell_ends || band_rows_ == most_band_rows) end_band();
    if (cell_ends) end_cells();
}

/// Adds the columns of a band up to the cells that they lie in.
void InkRows::end_band() {
    widen_box();
    const auto* sums = reinterpret_cast<const std::uint16_t*>(sums_->data());
    std::uint8_t* const darkest_cells = &map_.darkest[map_.at(0, (y_ - 1 + shift_y_) / cell_)];
    std::uint32_t x = 0;
    for (std::uint32_t column = 0; column < map_.columns; ++column) {
        const std::uint32_t end = std::min(form_.width, (column + 1) * cell_ - shift_x_);
        std::uint64_t sum = 0;
        std::uint8_t most = darkest_cells[column];
        for (; x < end; ++x) {
            sum += sums[x];
            most = std::max(most, darkest_->data()[x]);
        }
        cell_sums_[column] += sum;
        darkest_cells[column] = most;
    }
    cell_rows_ += band_rows_;
    band_rows_ = 0;
    std::memset(darkest_->data(), 0, darkest_->size());
    std::memset(sums_->data(), 0, sums_->size());
}

void InkRows::widen_box() {
    const std::uint8_t* const darkest = darkest_->data();
    const auto inked = [](std::uint8_t value) { return value >= ink_threshold; };
    box_.left = static_cast<std::uint32_t>(std::find_if(darkest, darkest + box_.left, inked) - darkest);
    std::uint32_t right = form_.width;
    while (right > box_.right && !inked(darkest[right - 1])) --right;
    box_.right = right;
}

void InkRows::end_cells() {
    const std::uint32_t row = (y_ - 1 + shift_y_) / cell_;
    std::uint32_t x = 0;
    for (std::uint32_t column = 0; column < map_.columns; ++column) {
        const std::uint32_t end = std::min(form_.width, (column + 1) * cell_ - shift_x_);
        const std::uint64_t pixels = std::uint64_t{end - x} * cell_rows_;
        map_.mean[map_.at(column, row)] = static_cast<std::uint8_t>((cell_sums_[column] + pixels / 2) / pixels);
        total_ += cell_sums_[column];
        x = end;
    }
    std::fill(cell_sums_.begin(), cell_sums_.end(), 0);
    cell_rows_ = 0;
}

Ink InkRows::ink() const {
    Ink ink;
    ink.box = turned(box_, turn_, form_.width, form_.height);
    ink.coverage = static_cast<double>(total_) / (255.0 * form_.width * form_.height);
    ink.map = map_;
    ink.map.darkest = turned(map_.darkest, turn_, map_.columns, map_.rows, 1);
    ink.map.mean = turned(map_.mean, turn_, map_.columns, map_.rows, 1);
    if (turn_.exchange) std::swap(ink.map.columns, ink.map.rows);
    return ink;
}

}  // namespace qw::artwork
