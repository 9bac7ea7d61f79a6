// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// A printed sheet as a buyer has it: pixels, and nothing else. What is cut out of it is found from its lines alone; no
// geometry of the project is asked.

#include "program/program.h"

#include "base/length.h"

#include <cstdint>

namespace qw::test::cutting {

inline constexpr int dpi = 600;
inline double mm_of(double pixels) { return pixels / dpi * 25.4; }
inline double pixels_of(double mm) { return mm / 25.4 * dpi; }

/// One page in grey, from the top. Artwork is pale; what is darker is a line or a word.
struct PrintedSheet {
    int width = 0, height = 0;
    std::string grey;
    unsigned char at(int x, int y) const { return static_cast<unsigned char>(grey[static_cast<std::size_t>(y) * width + x]); }
    bool dark(int x, int y) const { return at(x, y) < 110; }
    bool pale(int x, int y) const { return at(x, y) >= 110 && at(x, y) < 250; }
};

PrintedSheet printed_sheet(const Path& pdf, int page, const Path& scratch);

/// Pixels from and to (not included), in the sheet.
struct Extent {
    int left = 0, top = 0, right = 0, bottom = 0;
    int width() const { return right - left; }
    int height() const { return bottom - top; }
};

/// A set of pixels within an extent of the sheet; none is set outside.
struct Mask {
    Extent box;
    std::vector<std::uint8_t> set;
    explicit Mask(Extent e = {}) : box(e), set(static_cast<std::size_t>(e.width()) * e.height()) {}
    bool inside(int x, int y) const { return x >= box.left && x < box.right && y >= box.top && y < box.bottom; }
    std::uint8_t& at(int x, int y) { return set[static_cast<std::size_t>(y - box.top) * box.width() + (x - box.left)]; }
    std::uint8_t at(int x, int y) const { return inside(x, y) ? set[static_cast<std::size_t>(y - box.top) * box.width() + (x - box.left)] : 0; }
};

/// A run of pixels in a row.
struct Run {
    int y, from, to;
    int blob;
};
/// What hangs together, edge on edge.
struct Blob {
    Extent box;
    long long pixels = 0;
    double sum_x = 0, sum_y = 0;
};
struct Blobs {
    std::vector<Run> runs;
    std::vector<Blob> blobs;
    int largest() const;
};
Blobs blobs_of(const Mask& mask);
/// Of the sheet's pixels that are not dark.
Blobs light_blobs_of(const PrintedSheet& sheet);

/// What falls out when scissors follow the middle of the line round it.
struct CutPiece {
    Mask piece;
    Mask with_line;     ///< to the outer edge of the line
    int line = 0;       ///< how wide the line is
};
/// The paper is what hangs together with the sheet's corner; the largest thing that it surrounds is the piece.
CutPiece cut_out(const PrintedSheet& sheet);

/// A straight broken line, upright or level, in the sheet: `at` is its middle, across.
struct BrokenLine {
    bool upright = false;
    double at = 0;
    int from = 0, to = 0;
};
/// Rows of dashes inside a piece, extended to its edge where that is no farther than a dash and its gap.
std::vector<BrokenLine> broken_lines(const PrintedSheet& sheet, const Mask& piece);

}  // namespace qw::test::cutting
