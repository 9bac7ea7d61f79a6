// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace qw::artwork {

/// CIE 1976 L*a*b* under D50, the white of ICC profiles (ICC.1:2010 7.2.16). L* runs from 0 to 100.
struct Lab {
    double l = 0, a = 0, b = 0;
};

/// The colour of an sRGB pixel (IEC 61966-2-1), adapted from D65 to D50 by Bradford's matrix.
Lab lab_of_srgb(std::uint8_t red, std::uint8_t green, std::uint8_t blue);

/// How far two colours are apart to the eye: CIEDE2000 with kL = kC = kH = 1 (CIE 142-2001; written as in Sharma, Wu,
/// Dalal, Color Res. Appl. 30(1) 2005, 21-30). About 1 is what can just be seen side by side.
double ciede2000(const Lab& one, const Lab& other);

}  // namespace qw::artwork
