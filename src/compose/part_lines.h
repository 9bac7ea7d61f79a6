// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "compose/shape_room.h"
#include "parts/folding.h"
#include "texts/passages.h"

#include <string>
#include <vector>

namespace qw::compose {

/// The lines of a part as they are printed on the front of its sheet. In the flat net.
struct PartLines {
    std::vector<parts::Outline> cut;
    std::vector<parts::ScoreLine> scores;
    std::vector<parts::Hole> holes;
    /// Of each glue tab what may be hatched: its front, where nobody sees it in the end. Empty for a tab that is glued
    /// with its back and shows its front.
    std::vector<parts::Region> tabs;
};

PartLines lines_of(const parts::Net& net, const parts::Folded& folded);

/// Lays them on a page by a map that turns and moves, but does not stretch. Arcs become Bézier curves that miss the circle
/// by less than 0.03 % of its radius. Tabs carry the word `glue` in a gap of their hatching, where it fits inside them.
void draw_part_lines(Canvas& canvas, const PartLines& lines, const Matrix& map, const kit::PartRules& rules, const std::string& glue);

/// An outline with its arcs, without stroke and fill.
Outline outline_on_page(const parts::Outline& outline, const Matrix& map);

}  // namespace qw::compose
