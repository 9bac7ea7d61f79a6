// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/unit_system.h"
#include "compose/canvas.h"

namespace qw::compose {

/// A ruler along x from `zero`, marked every millimetre or sixteenth of an inch, numbered every 10 mm or 1 in; its marks
/// stand up from the base line. `count` is in numbered steps.
void ruler_across(Canvas& canvas, Point zero, UnitSystem system, int count);

/// A gauge of exactly `length` along y from `low`: a heavy line between two end marks, its ends shown by flags.
void gauge_up(Canvas& canvas, Point low, Length length);

/// One of a pair of crosses that fall on each other when a sheet is printed on both sides and held against the light.
/// Marks every 0.5 mm to `register_reach`; those of the front stand above and to the right of the arms, those of the
/// back, seen through the paper, below and to the left, so that both scales meet at the arms and are read against each
/// other. Nothing for `back_turned` is the front; else how the sheet is turned over to its back.
void register_cross(Canvas& canvas, Point centre, std::optional<Duplex> back_turned);
inline constexpr Length register_step = Length::mm(0.5), register_reach = Length::mm(5), register_arm = Length::mm(8);
/// Where a point of the front lies on the back of a sheet that is turned over as `turned` says.
Point behind(Point front, Size sheet, Duplex turned);

/// Fields of grey from white to black in steps of a tenth, each with its per cent below it.
void grey_strip(Canvas& canvas, Point top_left, Length width);

}  // namespace qw::compose
