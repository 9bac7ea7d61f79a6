// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/ink_map.h"

#include <cstdint>
#include <string>
#include <vector>

namespace qw::test {

// Programs of others that say what a PDF is. They stand in for the printers and viewers of the people who buy it.

struct Outcome {
    int status = 0;
    std::string output;  ///< standard output and standard error
};
Outcome run(const std::string& command);
/// Fails the test when the command does.
std::string must_run(const std::string& command);
std::string quoted(const Path& path);
bool contains(const std::string& text, const std::string& part);

/// `qpdf --check` without a word of warning.
void check_sound(const Path& pdf);

struct Pixels {
    std::uint32_t width = 0, height = 0;
    std::vector<std::uint8_t> rgb;
    const std::uint8_t* at(std::uint32_t x, std::uint32_t y) const { return rgb.data() + 3 * (std::size_t{y} * width + x); }
};
/// A binary PPM, PGM or PBM.
Pixels read_ppm(const Path& file);
/// Page (from 1) as poppler, Ghostscript and mutool draw it, in this order.
std::vector<Pixels> rendered(const Path& pdf, int page, int dpi, const Path& folder);
/// Over all samples, 0…255; fails the test when the sizes differ.
double mean_difference(const Pixels& a, const Pixels& b);
/// All three render the page alike: mean difference at most 3 levels. Returns poppler's.
Pixels check_alike(const Path& pdf, int page, const Path& folder, int dpi = 100);
/// Smallest box of pixels darker than mid grey.
PixelBox dark_box(const Pixels& pixels);

}  // namespace qw::test
