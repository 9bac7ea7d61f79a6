// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/packing.h"

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

// Judges of packings that share no code with the packing: segments and points in millimetres, and cells of a grid.
namespace qw::tests {

parts::Region shape_mm(const std::vector<std::pair<double, double>>& corners);
parts::Region rectangle_mm(double width, double height);

/// Each spot's outline in the area, no two nearer than `gap` (edge to edge and none inside another): empty, or the first
/// thing that is wrong. Rounding to 1/36000 mm is forgiven.
std::string wrong_with(const parts::SheetFill& fill, const parts::Region& shape, Size area, Length gap);

/// A shape of whole cells on a sheet of at most 64 cells.
struct Cells {
    int width = 0, height = 0;         ///< of the sheet
    std::vector<std::pair<int, int>> shape;
};
/// The most copies, up to `wanted`, of all sets of places and quarter turns on whole cells, `gap` cells apart.
std::size_t most_on_cells(const Cells& cells, int gap, std::size_t wanted);

}  // namespace qw::tests
