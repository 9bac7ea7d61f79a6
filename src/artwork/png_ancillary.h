// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/colour.h"
#include "artwork/facts.h"
#include "artwork/png_header.h"

#include <optional>
#include <span>
#include <string_view>

namespace qw::artwork {

/// Gathers what the chunks between IHDR and IDAT say about density and colour.
class PngAncillary {
public:
    /// Most bytes that a chunk of this name may have to be worth reading; 0: it says nothing that is needed.
    static std::uint32_t longest(std::string_view name);
    /// The first chunk of a name counts, as in libpng. Throws Damage.
    void take(std::string_view name, std::span<const std::byte> body);

    std::optional<Density> density() const { return density_; }
    /// Whether the file says what its colours mean, beyond a gamma and primaries that are those of sRGB anyway.
    bool says_colours() const;
    /// Nothing: sRGB. In the order of precedence of the specification (cICP, iCCP, sRGB, cHRM and gAMA).
    std::optional<Profile> other_than_srgb(Model model) const;

private:
    void take_density(std::span<const std::byte> body);
    void take_profile(std::span<const std::byte> body);
    std::optional<Primaries> unusual() const;

    std::optional<Density> density_;
    std::vector<std::byte> icc_;
    bool srgb_ = false, cicp_is_srgb_ = false;
    std::string cicp_;  ///< as it is told to people; empty: none
    std::optional<std::uint32_t> gamma_;
    std::vector<std::uint32_t> primaries_;
};

}  // namespace qw::artwork
