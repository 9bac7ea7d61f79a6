// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_plan.h"

#include <vector>

/// What the parts of the cutting plan share. Everything in here is thought with the board's grain running up: a piece
/// with its grain along its width lies turned, and a board with its grain along its width is held turned.
namespace qw::journal::cutting {

/// In square length units: whole numbers that a double holds exactly up to about 6.9 m².
constexpr double area_of(Size size) { return static_cast<double>(size.width.in_units()) * static_cast<double>(size.height.in_units()); }

/// Pieces that are alike in size and grain.
struct Sort {
    Size size;                        ///< as it lies with its grain up
    bool turnable = false;            ///< it may lie on its side, and that makes a difference
    std::vector<std::size_t> pieces;  ///< one entry for each to be cut: which of the asked pieces it is
    double area() const { return area_of(size); }
};

/// A board as it may be held, grain up.
struct HeldBoard {
    std::size_t board = 0;            ///< index into the supply
    bool turned = false;
    Size size;
    double area() const { return area_of(size); }
    bool holds(Size what) const { return what.width <= size.width && what.height <= size.height; }
};

std::vector<Sort> sorts_of(const std::vector<CutPiece>& pieces);
/// `grain_matters`: some piece has a grain. If none has, a board need not be tried both ways.
std::vector<HeldBoard> held_boards(const std::vector<BoardSupply>& supply, bool grain_matters);
bool fits(const Sort& sort, const HeldBoard& board);

}  // namespace qw::journal::cutting
