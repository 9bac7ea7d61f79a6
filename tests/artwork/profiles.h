// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/held_disk.h"

namespace qw::artwork::test {

/// Profiles that lcms2 builds for the tests.
Bytes srgb_version_2();
/// The primaries of Adobe RGB (1998) with the exponent 2.19921875 (from memory: Adobe RGB (1998) encoding, 4.3).
Bytes wide_rgb();
/// Display P3: primaries of SMPTE EG 432-1 with D65 and the curve of sRGB (from memory), under that name.
Bytes display_p3();
/// sRGB with a name that is not, and 150,000 bytes of copyright.
Bytes long_srgb();
Bytes grey_gamma(double gamma);
Bytes grey_srgb_curve();
/// CMYK whose colours are those of the sRGB pixel (255 − C)(255 − K) / 255 …
Bytes plain_cmyk();

}  // namespace qw::artwork::test
