// SPDX-License-Identifier: GPL-3.0-or-later
// The inks of the kits: few, quiet, and light where they cover much, because buyers print at home.
#pragma once

namespace art {

struct Colour {
    double r = 0;
    double g = 0;
    double b = 0;
};

constexpr Colour rgb(unsigned hex) {
    return {((hex >> 16) & 255) / 255.0, ((hex >> 8) & 255) / 255.0, (hex & 255) / 255.0};
}

constexpr Colour mix(Colour a, Colour b, double t) {
    return {a.r + (b.r - a.r) * t, a.g + (b.g - a.g) * t, a.b + (b.b - a.b) * t};
}

inline constexpr Colour kWhite = rgb(0xffffff);
inline constexpr Colour kInk = rgb(0x1f3b5c);
inline constexpr Colour kInkMid = rgb(0x55728f);
inline constexpr Colour kInkSoft = rgb(0x9fb2c3);
inline constexpr Colour kInkPale = rgb(0xd3dde5);
inline constexpr Colour kNight = rgb(0x1a2f4b);
inline constexpr Colour kGlassDeep = rgb(0x4f8f88);
inline constexpr Colour kGlass = rgb(0x9cc8be);
inline constexpr Colour kGlassSoft = rgb(0xc9e2db);
inline constexpr Colour kGlassPale = rgb(0xe6f2ee);
inline constexpr Colour kPaper = rgb(0xfdfaf3);
inline constexpr Colour kBuff = rgb(0xf7efdd);
inline constexpr Colour kBuffMid = rgb(0xecdfc3);
inline constexpr Colour kBuffDeep = rgb(0xcdb88f);
inline constexpr Colour kBrick = rgb(0xa9452f);
inline constexpr Colour kBrickSoft = rgb(0xe3b5a4);
inline constexpr Colour kDusk = rgb(0x38375a);  // the lamp keeper's evening
inline constexpr Colour kDuskMid = rgb(0x77759a);
inline constexpr Colour kDuskSoft = rgb(0xb9b7cf);
inline constexpr Colour kDuskPale = rgb(0xeceaf3);
inline constexpr Colour kAmber = rgb(0xd98f3a);
inline constexpr Colour kGlow = rgb(0xfdf3d8);
inline constexpr Colour kStraw = rgb(0xf2d98f);

}  // namespace art
