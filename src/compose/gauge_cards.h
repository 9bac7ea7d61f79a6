// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "journal/measures.h"
#include "texts/passages.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What a gauge says of a length: its title and both unit systems, the paper's own first.
struct GaugeLength {
    std::string name, title;
    Length length;               ///< as it is drawn, in the paper's own ruler
    std::string own, other;
};

/// The template's lengths of these names that are there, stay the same at every size and can be cut from paper.
std::vector<GaugeLength> gauge_lengths(const journal::Measures& measures, const std::vector<std::string>& names, const texts::Passages& words);

/// An angle whose inner corner is laid on the board's corner: its outer edges show the turn-in, the line across it where
/// the corner is cut off, `corner` (zero: no line) from the board's corner. Legs of `leg` beyond the corner, at least
/// long enough for the line. Returns the size that it took, its upper left corner at `at`.
Size draw_angle_gauge(Canvas& canvas, Point at, Length leg, const GaugeLength& turn_in, const GaugeLength* corner, const texts::Passages& words);

/// A card with a step for each length, side by side, from the left. Returns its size.
Size draw_step_card(Canvas& canvas, Point at, const std::vector<GaugeLength>& lengths);
inline constexpr Length step_column = Length::mm(26);

}  // namespace qw::compose
