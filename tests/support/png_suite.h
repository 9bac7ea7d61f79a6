// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace qw::test {

/// A picture of PngSuite by Willem van Schaik, which has one of every kind of PNG. Its name tells what it is: `kind` (ba
/// basic, g0 gamma, s0 sizes, x damaged …), then n or i (interlaced), the colour type, a letter, two digits of bit depth.
struct SuitePicture {
    std::string name;  ///< without ".png": "basn3p04"
    std::vector<std::byte> bytes;

    bool damaged() const { return name[0] == 'x'; }
    bool interlaced() const { return name[3] == 'i'; }
    int colour_type() const { return name[4] - '0'; }
    int bits() const { return (name[6] - '0') * 10 + name[7] - '0'; }
};

/// All of them by name, as Debian's package libsixel-examples has them. Throws when they are not there.
std::vector<SuitePicture> png_suite();

}  // namespace qw::test
