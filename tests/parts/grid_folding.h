// SPDX-License-Identifier: GPL-3.0-or-later
// The judge of the folding: the same work on a grid of cells. It knows no polygons, no lengths and nothing of src/parts.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

namespace grid {

using Cell = std::pair<int, int>;      ///< column, row

/// A sheet of paper of whole cells; each belongs to a panel. Neighbours of other panels are in one piece with them.
struct Sheet {
    std::map<Cell, int> panel_of;
    int panels = 0;
};

/// One cell of paper where it lies now: which one, and whether its columns, its rows run the other way.
struct Layer {
    Cell flat;
    bool against_x = false, against_y = false;
    bool back_up() const { return against_x != against_y; }
};

/// The layers over each cell of the table, from the lowest up.
using Table = std::map<Cell, std::vector<Layer>>;
Table laid_flat(const Sheet& sheet);

enum class Outcome {
    folded,
    torn,                              ///< edges between what moves and what stays that are not on one line, or none
    barred,                            ///< paper in the way, or layers that no order of whole panels tells
    unclear                            ///< as much moves on one side of the line as on the other
};
/// Half a turn of the panels that move, toward the viewer or away.
Outcome fold(const Sheet& sheet, Table& table, const std::set<int>& moves, bool toward);

/// 1 when a lies above b wherever both lie, -1 below, 0 when they share no cell; nothing when cells contradict each other.
std::optional<int> order(const Sheet& sheet, const Table& table, int a, int b);

/// The cells of a panel, in the sheet, over which another of `covering` lies on one of its sides.
std::set<Cell> covered(const Sheet& sheet, const Table& table, int panel, bool back_side, const std::set<int>& covering);

/// Panels that cannot be lifted off this one once `glued` pairs hold, itself included: whole numbers modulo a prime, so
/// that nothing is rounded. `folded` are the pairs of panels between which a fold was made.
std::set<int> held_to(const Sheet& sheet, const Table& closed, const std::set<std::pair<int, int>>& folded,
                      const std::vector<std::pair<int, int>>& glued, int panel);

}  // namespace grid
