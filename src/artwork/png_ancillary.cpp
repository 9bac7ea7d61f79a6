// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/png_ancillary.h"

#include "artwork/bytes.h"
#include "artwork/damage.h"
#include "artwork/inflate.h"

#include <algorithm>
#include <cstdlib>

namespace qw::artwork {

namespace {

constexpr std::uint32_t longest_profile_chunk = 4u << 20;
constexpr std::size_t longest_profile = std::size_t{16} << 20;

constexpr double metres_per_inch = 0.0254;

// PNG specification, 11.3.2.2 and 11.3.2.1: in 1/100000.
constexpr std::uint32_t srgb_gamma = 45455;
constexpr std::uint32_t srgb_primaries[8] = {31270, 32900, 64000, 33000, 30000, 60000, 15000, 6000};
// Writers round these; a hundredth is far below what can be seen.
constexpr std::uint32_t near_enough = 1000;

bool near(std::uint32_t a, std::uint32_t b) { return (a > b ? a - b : b - a) <= near_enough; }

std::vector<std::byte> unpacked_profile(std::span<const std::byte> packed) {
    Inflate inflate;
    inflate.give(packed);
    std::vector<std::byte> profile;
    Scratch piece(std::size_t{64} << 10);
    while (const std::size_t n = inflate.take(piece.data(), piece.size())) {
        if (profile.size() + n > longest_profile) damaged("its colour profile is larger than 16 MiB");
        const auto bytes = piece.bytes().first(n);
        profile.insert(profile.end(), bytes.begin(), bytes.end());
    }
    if (!inflate.ended()) damaged("its colour profile is cut off");
    return profile;
}

}  // namespace

std::uint32_t PngAncillary::longest(std::string_view name) {
    if (name == "iCCP") return longest_profile_chunk;
    if (name == "pHYs" || name == "sRGB" || name == "gAMA" || name == "cHRM" || name == "cICP") return 64;
    return 0;
}

void PngAncillary::take(std::string_view name, std::span<const std::byte> body) {
    if (name == "pHYs" && !density_) take_density(body);
    if (name == "iCCP" && icc_.empty()) take_profile(body);
    if (name == "sRGB") srgb_ = true;
    if (name == "gAMA" && body.size() == 4 && !gamma_ && big32(body, 0) > 0) gamma_ = big32(body, 0);
    if (name == "cHRM" && body.size() == 32 && primaries_.empty())
        for (std::size_t i = 0; i < 8; ++i) primaries_.push_back(big32(body, 4 * i));
    if (name == "cICP" && body.size() == 4 && cicp_.empty()) {
        const int code[4] = {byte_at(body, 0), byte_at(body, 1), byte_at(body, 2), byte_at(body, 3)};
        for (const int number : code) cicp_ += (cicp_.empty() ? "" : "/") + std::to_string(number);
        cicp_is_srgb_ = cicp_ == "1/13/0/1";  // ITU-T H.273: primaries of BT.709, the curve of sRGB, RGB, full range
    }
}

void PngAncillary::take_density(std::span<const std::byte> body) {
    if (body.size() != 9 || byte_at(body, 8) != 1) return;  // unit 0 tells the shape of a pixel only
    const Density density{big32(body, 0) * metres_per_inch, big32(body, 4) * metres_per_inch};
    if (density.x > 0 && density.y > 0) density_ = density;
}

void PngAncillary::take_profile(std::span<const std::byte> body) {
    const auto end = std::find(body.begin(), body.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(body.size(), 80)), std::byte{0});
    const auto name = static_cast<std::size_t>(end - body.begin());
    if (name == 0 || name >= 80 || body.size() < name + 2 || byte_at(body, name + 1) != 0) damaged("its colour profile (iCCP) is not stored as PNG wants it");
    try {
        icc_ = unpacked_profile(body.subspan(name + 2));
    } catch (const Damage& damage) {
        damaged("its colour profile cannot be unpacked: " + damage.why);
    }
    if (icc_.empty()) damaged("its colour profile is empty");
}

/// cHRM and gAMA, when they are not those of sRGB.
std::optional<Primaries> PngAncillary::unusual() const {
    const bool same_gamma = !gamma_ || near(*gamma_, srgb_gamma);
    const bool same_primaries = primaries_.empty() || std::equal(primaries_.begin(), primaries_.end(), srgb_primaries, near);
    if (same_gamma && same_primaries) return std::nullopt;
    Primaries result;
    if (!same_gamma) result.gamma = *gamma_ / 1e5;
    if (same_primaries) return result;
    double* const places[8] = {&result.white_x, &result.white_y, &result.red_x, &result.red_y,
                               &result.green_x, &result.green_y, &result.blue_x, &result.blue_y};
    for (std::size_t i = 0; i < 8; ++i) *places[i] = primaries_[i] / 1e5;
    return result;
}

bool PngAncillary::says_colours() const { return !icc_.empty() || srgb_ || !cicp_.empty() || unusual(); }

std::optional<Profile> PngAncillary::other_than_srgb(Model model) const {
    if (cicp_is_srgb_) return std::nullopt;
    if (icc_.empty() && !cicp_.empty())
        damaged("its colour space (cICP " + cicp_ + ") cannot be converted; it needs a profile or sRGB");
    const auto primaries = srgb_ ? std::nullopt : unusual();
    if (icc_.empty() && !primaries) return std::nullopt;
    Profile profile = icc_.empty() ? Profile::of(*primaries, model) : Profile::read(icc_, model);
    return profile.is_srgb() ? std::nullopt : std::optional(std::move(profile));
}

}  // namespace qw::artwork
