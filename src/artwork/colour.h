// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace qw::artwork {

/// What the samples of a picture stand for.
enum class Model { grey, rgb, cmyk };

/// White point and primaries as CIE x, y, and the exponent between light and samples (samples = light ^ gamma); what
/// PNG's cHRM and gAMA say. Those of sRGB (IEC 61966-2-1) unless set.
struct Primaries {
    double white_x = 0.3127, white_y = 0.3290;
    double red_x = 0.64, red_y = 0.33, green_x = 0.30, green_y = 0.60, blue_x = 0.15, blue_y = 0.06;
    std::optional<double> gamma;  ///< nothing: the curve of sRGB
};

/// A colour profile, read. Cheap to copy.
class Profile {
public:
    /// From ICC profile bytes. Throws Damage when they are none, or none for this colour model; an sRGB profile on a
    /// grey picture is let pass, because programs that turn a picture grey leave it behind and it means the same.
    static Profile read(std::span<const std::byte> icc, Model model);
    static Profile of(const Primaries& primaries, Model model);

    Model model() const;
    /// Whether a grid of colours comes through unchanged, to one level of 255: names and descriptions are not looked
    /// at. Known for profiles that have been asked before.
    bool is_srgb() const;
    /// What it calls itself, for people: its description in ASCII, at most 60 characters.
    std::string name() const;
    /// How far the profile's colours, over a grid of them, are from what `Conversion` makes of them at most (CIEDE2000):
    /// colours that sRGB does not have are brought to its edge. About 1 for a profile whose colours all lie in sRGB.
    double farthest_move() const;

    struct Handle;
    const Handle& handle() const { return *handle_; }

private:
    explicit Profile(std::shared_ptr<const Handle> handle) : handle_(std::move(handle)) {}
    std::shared_ptr<const Handle> handle_;
};

/// How the samples of a row are stored, interleaved.
struct SampleLayout {
    int colours = 3;        ///< 1 grey, 3 RGB, 4 CMYK
    bool alpha = false;     ///< one more sample, which is copied
    int bytes = 1;          ///< per sample; 2: the machine's byte order
    bool inverted = false;  ///< CMYK with 0 for full ink, as Adobe's JPEG files have it
};

/// Converts rows to sRGB (IEC 61966-2-1), relative colorimetric with black point compensation; a grey profile to
/// grey with the curve of sRGB. CMYK becomes RGB, all else keeps its layout.
class Conversion {
public:
    Conversion(const Profile& profile, SampleLayout layout);
    void apply(const void* from, void* to, std::uint32_t pixels) const;

private:
    struct Close {
        void operator()(void* transform) const;
    };
    void make_greys();
    template <typename Sample>
    void apply_greys(const Sample* from, Sample* to, std::uint32_t pixels) const;

    SampleLayout layout_;
    std::unique_ptr<void, Close> transform_;
    std::vector<std::uint16_t> greys_;  ///< what each grey becomes; empty unless grey
};

}  // namespace qw::artwork
