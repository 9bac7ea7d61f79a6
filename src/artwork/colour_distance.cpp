// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/colour_distance.h"

#include <cmath>
#include <numbers>

namespace qw::artwork {

namespace {

double to_light(std::uint8_t level) {
    const double value = level / 255.0;
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

/// The curve of L*a*b* (CIE 15): a cube root, and a line below (6/29)^3.
double root(double share) { return share > 216.0 / 24389 ? std::cbrt(share) : (24389.0 / 27 * share + 16) / 116; }

constexpr double white[3] = {0.96422, 1, 0.82521};  // D50, CIE 15
// From the primaries and the white of sRGB, then Bradford's adaptation; each row adds up to the white.
constexpr double from_srgb[3][3] = {{0.4360747, 0.3850649, 0.1430804}, {0.2225045, 0.7168786, 0.0606169}, {0.0139322, 0.0971045, 0.7141733}};

double degrees(double radians) { return radians * 180 / std::numbers::pi; }
double cosine(double angle) { return std::cos(angle * std::numbers::pi / 180); }
double sine(double angle) { return std::sin(angle * std::numbers::pi / 180); }

/// 0 to 360, 0 for grey.
double hue_of(double a, double b) {
    if (a == 0 && b == 0) return 0;
    const double hue = degrees(std::atan2(b, a));
    return hue < 0 ? hue + 360 : hue;
}

/// Rises from 0 to 1 with the chroma; half-way at 25.
double chroma_share(double chroma) {
    const double seventh = std::pow(chroma, 7);
    return std::sqrt(seventh / (seventh + 6103515625.0));  // 25^7
}

/// A colour by lightness, chroma and hue, its a* stretched near grey.
struct Seen {
    double l, chroma, hue;
    Seen(const Lab& lab, double stretch) : l(lab.l), chroma(std::hypot(lab.a * stretch, lab.b)), hue(hue_of(lab.a * stretch, lab.b)) {}
};

double hue_difference(const Seen& one, const Seen& other) {
    if (one.chroma * other.chroma == 0) return 0;
    const double apart = other.hue - one.hue;
    return apart > 180 ? apart - 360 : apart < -180 ? apart + 360 : apart;
}

double mean_hue(const Seen& one, const Seen& other) {
    const double sum = one.hue + other.hue;
    if (one.chroma * other.chroma == 0) return sum;
    if (std::abs(one.hue - other.hue) <= 180) return sum / 2;
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

}  // namespace

Lab lab_of_srgb(std::uint8_t red, std::uint8_t green, std::uint8_t blue) {
    const double light[3] = {to_light(red), to_light(green), to_light(blue)};
    double f[3];
    for (int i = 0; i < 3; ++i) f[i] = root((from_srgb[i][0] * light[0] + from_srgb[i][1] * light[1] + from_srgb[i][2] * light[2]) / white[i]);
    return {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
}

double ciede2000(const Lab& first, const Lab& second) {
    const double stretch = 1 + 0.5 * (1 - chroma_share((std::hypot(first.a, first.b) + std::hypot(second.a, second.b)) / 2));
    const Seen one(first, stretch), other(second, stretch);
    const double light = (one.l + other.l) / 2 - 50, chroma = (one.chroma + other.chroma) / 2, hue = mean_hue(one, other);

    const double weight = 1 - 0.17 * cosine(hue - 30) + 0.24 * cosine(2 * hue) + 0.32 * cosine(3 * hue + 6) - 0.20 * cosine(4 * hue - 63);
    const double by_light = (other.l - one.l) / (1 + 0.015 * light * light / std::sqrt(20 + light * light));
    const double by_chroma = (other.chroma - one.chroma) / (1 + 0.045 * chroma);
    const double by_hue = 2 * std::sqrt(one.chroma * other.chroma) * sine(hue_difference(one, other) / 2) / (1 + 0.015 * chroma * weight);
    // Chroma and hue pull each other in the blues.
    const double turn = (hue - 275) / 25;
    const double pull = -sine(60 * std::exp(-turn * turn)) * 2 * chroma_share(chroma);
    return std::sqrt(by_light * by_light + by_chroma * by_chroma + by_hue * by_hue + pull * by_chroma * by_hue);
}

}  // namespace qw::artwork
