// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/png_pixels.h"

#include "artwork/damage.h"
#include "artwork/unfilter.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace qw::artwork {

namespace {

// Unpacked bytes are filtered and looked at while they are still in the cache; ISA-L copies its history of 32 KiB
// about once a window, so a small one would cost.
constexpr std::size_t window_bytes = std::size_t{512} << 10;

std::size_t window_for(const PngHeader& header) {
    return std::max<std::size_t>(window_bytes, 2 * (header.row_bytes(header.width) + 1));
}

}  // namespace

PngPixels::PngPixels(const PngHeader& header, PngFinish& finish, Rows& rows)
    : header_(header),
      finish_(finish),
      rows_(rows),
      passes_(passes_of(header)),
      window_(window_for(header) + row_slack),
      above_(header.row_bytes(header.width) + row_slack),
      current_(header.row_bytes(header.width) + row_slack) {
    const auto components = static_cast<std::size_t>(finish.form().components);
    if (header.interlaced) whole_.resize(std::size_t{header.width} * header.height * components + row_slack);
    begin_pass();
}

void PngPixels::begin_pass() {
    row_ = 0;
    row_bytes_ = header_.row_bytes(passes_[pass_].width);
    std::memset(above_.data(), 0, row_bytes_ + row_slack);
}

void PngPixels::add(std::span<const std::byte> packed) {
    inflate_.give(packed);
    while (const std::size_t n = inflate_.take(window_.data() + held_, window_.size() - row_slack - held_)) {
        const std::size_t used = take_rows(held_ + n);
        held_ += n - used;
        std::memmove(window_.data(), window_.data() + used, held_);
        if (complete() && held_ > 0) damaged("its compressed data hold more than its header says");
    }
    if (inflate_.ended() && inflate_.left_over() > 0) damaged("there are bytes behind the end of its compressed data");
}

/// As many whole rows as there are; returns how many bytes that were.
std::size_t PngPixels::take_rows(std::size_t held) {
    std::size_t used = 0;
    while (!complete() && held - used > row_bytes_) {
        const std::size_t bytes = row_bytes_ + 1;
        take_row(window_.data() + used);
        used += bytes;
    }
    return used;
}

void PngPixels::take_row(const std::uint8_t* filtered) {
    const PngPass& pass = passes_[pass_];
    if (!unfilter(filtered[0], filtered + 1, above_.data(), current_.data(), row_bytes_, header_.step()))
        damaged("row " + std::to_string(row_ + 1) + " has filter " + std::to_string(filtered[0]) + ", which PNG does not have");
    const std::uint8_t* samples = finish_.finish(current_.data(), pass.width);
    if (header_.interlaced)
        scatter(samples);
    else
        rows_.row(samples);
    above_.swap(current_);
    if (++row_ == pass.height && ++pass_ < passes_.size()) begin_pass();
}

void PngPixels::scatter(const std::uint8_t* samples) {
    const PngPass& pass = passes_[pass_];
    const auto components = static_cast<std::size_t>(finish_.form().components);
    const std::size_t y = pass.first_y + std::size_t{row_} * pass.step_y;
    std::uint8_t* to = whole_.data() + (y * header_.width + pass.first_x) * components;
    for (std::uint32_t i = 0; i < pass.width; ++i, samples += components, to += pass.step_x * components)
        std::memcpy(to, samples, components);
}

void PngPixels::end() {
    if (!complete()) damaged(inflate_.ended() ? "its compressed data hold less than its header says" : "its compressed data end too early");
    if (!inflate_.ended()) damaged("the end and the check sum of its compressed data are missing");
    const auto components = static_cast<std::size_t>(finish_.form().components);
    for (std::uint32_t y = 0; header_.interlaced && y < header_.height; ++y)
        rows_.row(whole_.data() + std::size_t{y} * header_.width * components);
}

}  // namespace qw::artwork
