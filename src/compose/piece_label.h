// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "compose/clear_space.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What stands on a piece in a drawing: its title, its size as it is cut, and its size for the other ruler, smaller.
struct PieceLabel {
    std::string title, own, other;
};

/// Sets the label in the middle of a piece in the first of its arrangements that has room: in rows or in one row, upright
/// or turned, at last without the other ruler. False, and draws nothing, when none has.
bool set_on_piece(Canvas& canvas, ClearSpace& space, const Rect& piece, const PieceLabel& label);

/// The label in one row; its size, and setting it with its left lower corner at a point.
Size size_in_a_row(const Canvas& canvas, const PieceLabel& label);
void set_in_a_row(Canvas& canvas, ClearSpace& space, Point corner, const PieceLabel& label);

}  // namespace qw::compose
