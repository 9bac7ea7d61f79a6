// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"

#include <functional>
#include <string>
#include <vector>

namespace qw::compose {

/// One way of drawing something: at a scale, in an arrangement. Returns false when it knows that it cannot.
using Way = std::function<bool(Canvas&)>;

/// Draws in the first of several ways, best first, in which everything stays inside `room`, no text lies over another,
/// and no line or dark shape runs through one. Each way is tried on an empty canvas first. Draws nothing and returns
/// false when there is none.
bool draw_first_clear(Canvas& canvas, const Rect& room, const std::vector<Way>& ways);

/// The usual scales of a drawing, as how many times smaller it is than the thing: 2 : 1, 1.5 : 1, 1 : 1 … 1 : 10.
inline constexpr double drawing_scales[] = {0.5, 2.0 / 3, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 10};
/// "1 : 2.5", "2 : 1".
std::string scale_text(double smaller);

}  // namespace qw::compose
