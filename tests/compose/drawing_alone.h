// SPDX-License-Identifier: GPL-3.0-or-later
// One drawing by itself in a part of a sheet, and what is true of every one.
#pragma once

#include "compose/drawn_samples.h"
#include "compose/sample_kit.h"

#include <string>
#include <utility>
#include <vector>

namespace qw::test {

/// The words of the drawings.
const texts::Passages& drawing_words();

using Drawn = bool (*)(compose::Canvas&, const Rect&, const journal::Measures&, const texts::Passages&);

struct Drawing {
    bool there = false;
    compose::Page page;
    std::vector<const compose::Text*> texts() const;
    bool says(const std::string& words) const;
};

Drawing drawing(Drawn draw, const Rect& room, const Paper& paper, const journal::Measures& measures);

/// The box around an outline's points; of a curve its end.
Rect box_of_outline(const compose::Outline& outline);

/// Nothing leaves the room, no text is small, over another, under a line or under something dark; three line weights.
void check_clear(const Drawing& made, const Rect& room);

/// The part of a sheet that is left below a table, from all of it to less than half.
std::vector<Rect> rooms(const Paper& paper);

/// Print sizes in percent.
extern const std::vector<double> print_sizes;

/// Straight two-point strokes of a weight.
std::vector<std::pair<Point, Point>> lines_of(const compose::Page& page, Length weight, bool dashed = false);

/// "Drawn at 1 : 2.5" → 2.5.
double stated_scale(const Drawing& made);

}  // namespace qw::test
