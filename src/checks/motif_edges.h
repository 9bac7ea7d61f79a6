// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "base/ink_map.h"

#include <functional>

namespace qw::checks {

/// Where a picture has drawn edges, coarsely: cells of its ink map that are darker or lighter than the next one to the right
/// or below by at least `least` levels of 255. A plain ground, a wash or a gradient has none; lines and figures have.
struct MotifEdges {
    std::size_t all = 0;         ///< cells with an edge
    std::size_t inside = 0;      ///< of them, those that were asked for
    std::size_t asked = 0;       ///< cells that were asked for, with an edge or without
};

/// `area` is where the whole picture lies; `asked` is told the middle of each cell in the same space.
MotifEdges motif_edges(const Ink& ink, std::uint32_t width, std::uint32_t height, const Rect& area, double least, const std::function<bool(Point)>& asked);

}  // namespace qw::checks
