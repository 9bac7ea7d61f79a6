// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/paper.h"
#include "compose/canvas.h"

namespace qw::compose {

/// The print check's gauge once more (gauge_length of the paper), upright at the right side of `room`, half-way up, its
/// length beside it; takes gauge_room of width.
void draw_gauge(Canvas& canvas, const Rect& room, const Paper& paper);
inline constexpr Length gauge_room = Length::mm(13);

}  // namespace qw::compose
