// SPDX-License-Identifier: GPL-3.0-or-later
// Finished drawings as files. Each function throws std::runtime_error naming the file when it
// cannot be written.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "pen.h"

namespace art {

using Drawing = std::function<void(Pen&)>;

// Pixels of a canvas at 300 per inch, rows from the top. Colours are not multiplied by alpha.
struct Pixels {
    int width = 0;
    int height = 0;
    int channels = 3;  // 3: RGB, 4: RGBA
    std::vector<std::uint8_t> bytes;
};

Pixels paint(const Drawing& drawing, bool alpha = false);
// Another canvas than the sheets'. It may begin left of and above 0,0: a piece is drawn from the corner where it is
// cut, and its bleed lies outside.
Pixels paint(const Drawing& drawing, const Box& canvas, bool alpha = false);

// RGB or RGBA, 8 bits, the filter that packs best, deflate level 9, pHYs for 300 per inch.
void write_png(const std::string& path, const Pixels& pixels);
// The same as a palette picture (colour type 3). Pixels must be RGB.
void write_palette_png(const std::string& path, const Pixels& pixels);
// One channel of grey (colour type 0), as bright as the colours are (ITU-R BT.709's weights). Pixels must be RGB.
void write_grey_png(const std::string& path, const Pixels& pixels);
// Baseline JPEG with JFIF density; chroma is halved when `halved`.
void write_jpeg(const std::string& path, const Pixels& pixels, int quality, bool halved);
// One page a drawing; the same bytes on every run.
void write_pdf(const std::string& path, const std::string& title, const std::vector<Drawing>& pages);

}  // namespace art
