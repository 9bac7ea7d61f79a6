// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "journal/measures.h"
#include "texts/passages.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// A strip or a fold with holes along it, at true size.
struct Strip {
    Length width, length;            ///< width zero: a fold
    std::vector<Length> stations;    ///< down from the head
    std::vector<Length> rows;        ///< from the strip's middle; none is one row in the middle
    UnitSystem ruler = UnitSystem::metric;
};

/// What stands beside an upright strip: the running distances of its holes.
Length width_of_distances(const Canvas& canvas, const Strip& strip);

/// Draws a strip upright, `smaller` times smaller than it is, its head at `top_left`; beside it each hole's distance
/// from the head in one running row, 12 pt. Where holes are close the figures move apart, between `low` and `high`.
/// Returns false, and draws nothing, when they have no room.
bool draw_upright_strip(Canvas& canvas, Point top_left, double smaller, const Strip& strip, Length low, Length high);
/// Draws a strip lying, its head at `left`, and the distances in rows below it, as wide as `room`, whose top is the
/// strip's upper edge. Returns the height that it took; nothing when there is no room.
std::optional<Length> draw_lying_strip(Canvas& canvas, const Rect& room, Length left, double smaller, const Strip& strip);

/// The holes in the pages and those in the spine as two strips, dimensioned, at a usual scale. Draws nothing and
/// returns false without stations or without room. Words: pipeline/texts/drawings.mustache.
bool draw_stations(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words);

}  // namespace qw::compose
