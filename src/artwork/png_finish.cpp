// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/png_finish.h"

#include "artwork/bytes.h"
#include "artwork/damage.h"
#include "artwork/samples.h"

#include <algorithm>
#include <cstring>
#include <type_traits>

namespace qw::artwork {

namespace {

constexpr std::size_t most_samples = 4;

std::size_t scratch_bytes(const PngHeader& header) {
    const std::size_t sample = header.bits == 16 ? 2 : 1;
    return std::size_t{header.width} * most_samples * sample + row_slack;
}

}  // namespace

PngFinish::PngFinish(const PngHeader& header, const PngPaint& paint)
    : header_(header),
      as_it_is_(header.bits == 8 && header.type != PngHeader::palette && !header.alpha() && paint.transparency.empty() && !paint.convert),
      first_(as_it_is_ ? 0 : scratch_bytes(header)),
      second_(as_it_is_ ? 0 : scratch_bytes(header)),
      result_(as_it_is_ ? 0 : std::size_t{header.width} * 3 + row_slack) {
    form_.width = header.width;
    form_.height = header.height;
    form_.components = header.type == PngHeader::rgb || header.type == PngHeader::rgb_alpha ? 3 : 1;
    if (header.type == PngHeader::palette) {
        make_palette(paint);
        return;
    }
    read_key(paint);
    if (paint.convert)
        conversion_.emplace(*paint.convert, SampleLayout{form_.components, header.alpha() || keyed_, header.bits == 16 ? 2 : 1, false});
}

void PngFinish::make_palette(const PngPaint& paint) {
    entries_ = paint.palette.size() / 3;
    form_.palette.assign(256 * 3, 0);
    std::memcpy(form_.palette.data(), paint.palette.data(), entries_ * 3);
    if (paint.convert) {
        const std::vector<std::uint8_t> before = form_.palette;
        Conversion(*paint.convert, {3, false, 1, false}).apply(before.data(), form_.palette.data(), static_cast<std::uint32_t>(entries_));
    }
    for (std::size_t i = 0; i < paint.transparency.size(); ++i)
        for (std::size_t c = 0; c < 3; ++c)
            form_.palette[3 * i + c] = on_white(form_.palette[3 * i + c], byte_at(paint.transparency, i));
}

void PngFinish::read_key(const PngPaint& paint) {
    keyed_ = !paint.transparency.empty();
    const unsigned mask = (1u << header_.bits) - 1;  // PNG specification, 11.3.2.1: only the low bits count
    for (std::size_t c = 0; keyed_ && c < static_cast<std::size_t>(form_.components); ++c)
        key_[c] = static_cast<std::uint16_t>(big16(paint.transparency, 2 * c) & mask);
}

const std::uint8_t* PngFinish::indices(const std::uint8_t* row, std::uint32_t pixels) {
    const std::uint8_t* found = row;
    if (header_.bits < 8) {
        unpack_bits(row, result_.data(), pixels, header_.bits);
        found = result_.data();
    }
    if (entries_ < std::size_t{1} << header_.bits) {
        const unsigned highest = pixels == 0 ? 0 : *std::max_element(found, found + pixels);
        if (highest >= entries_)
            damaged("a pixel has colour number " + std::to_string(highest) + " of a palette with " + std::to_string(entries_) + " colours");
    }
    return found;
}

// Samples to the machine's form, the transparent colour to an alpha sample, fewer than 8 bits to 8. The transparent
// colour is compared before anything is scaled.
void PngFinish::expand(Relay<std::uint8_t>& relay, std::uint32_t pixels) const {
    if (header_.bits < 8) {
        unpack_bits(relay.now, relay.spare, pixels, header_.bits);
        relay.pass_on();
    }
    if (keyed_) {
        add_key_alpha(relay.now, relay.spare, pixels, form_.components, key_);
        relay.pass_on();
    }
    if (header_.bits < 8) {
        const int factor = 255 / ((1 << header_.bits) - 1);
        const std::size_t stride = keyed_ ? 2 : 1;
        for (std::size_t i = 0; i < pixels * stride; ++i)
            relay.spare[i] = i % stride ? relay.now[i] : static_cast<std::uint8_t>(relay.now[i] * factor);
        relay.pass_on();
    }
}

void PngFinish::expand(Relay<std::uint16_t>& relay, std::uint32_t pixels) const {
    swap_from_file(reinterpret_cast<const std::uint8_t*>(relay.now), relay.spare, std::size_t{pixels} * static_cast<unsigned>(header_.samples()));
    relay.pass_on();
    if (keyed_) {
        add_key_alpha(relay.now, relay.spare, pixels, form_.components, key_);
        relay.pass_on();
    }
}

template <typename Sample>
const std::uint8_t* PngFinish::finish_as(const std::uint8_t* row, std::uint32_t pixels) {
    Relay<Sample> relay{reinterpret_cast<const Sample*>(row), reinterpret_cast<Sample*>(first_.data()), reinterpret_cast<Sample*>(second_.data())};
    expand(relay, pixels);
    if (conversion_) {
        conversion_->apply(relay.now, relay.spare, pixels);
        relay.pass_on();
    }
    if (header_.alpha() || keyed_)
        lay_on_white(relay.now, result_.data(), pixels, form_.components);
    else if constexpr (std::is_same_v<Sample, std::uint16_t>)
        narrow(relay.now, result_.data(), std::size_t{pixels} * static_cast<unsigned>(form_.components));
    else
        return relay.now;
    return result_.data();
}

const std::uint8_t* PngFinish::finish(const std::uint8_t* row, std::uint32_t pixels) {
    if (as_it_is_) return row;
    if (header_.type == PngHeader::palette) return indices(row, pixels);
    return header_.bits == 16 ? finish_as<std::uint16_t>(row, pixels) : finish_as<std::uint8_t>(row, pixels);
}

}  // namespace qw::artwork
