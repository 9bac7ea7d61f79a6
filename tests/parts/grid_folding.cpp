// SPDX-License-Identifier: GPL-3.0-or-later
#include "grid_folding.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace grid {

namespace {

/// A line of the grid: between columns at - 1 and at, or between rows.
struct Line {
    bool upright = true;
    int at = 0;
    friend bool operator==(const Line&, const Line&) = default;
};

struct Place {
    Cell cell;
    std::size_t height = 0;
    Layer layer;
};

std::map<Cell, Place> places_on(const Table& table) {
    std::map<Cell, Place> places;
    for (const auto& [cell, layers] : table)
        for (std::size_t i = 0; i < layers.size(); ++i) places[layers[i].flat] = {cell, i, layers[i]};
    return places;
}

/// On which line of the table the edge lies that a cell of paper has toward (dx, dy) of the sheet.
Line edge_of(const Place& place, int dx, int dy) {
    if (dx != 0) return {true, place.cell.first + ((dx > 0) != place.layer.against_x ? 1 : 0)};
    return {false, place.cell.second + ((dy > 0) != place.layer.against_y ? 1 : 0)};
}

bool beyond(Cell cell, const Line& line) { return (line.upright ? cell.first : cell.second) >= line.at; }

Cell mirrored(Cell cell, const Line& line) {
    return line.upright ? Cell{2 * line.at - 1 - cell.first, cell.second} : Cell{cell.first, 2 * line.at - 1 - cell.second};
}

/// Calls for each pair of neighbours in the sheet that belong to two panels, both ways round.
template <typename Call>
void each_border(const Sheet& sheet, const Call& call) {
    constexpr std::array<Cell, 4> ways{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};
    for (const auto& [cell, panel] : sheet.panel_of)
        for (const auto& [dx, dy] : ways) {
            const auto other = sheet.panel_of.find({cell.first + dx, cell.second + dy});
            if (other != sheet.panel_of.end() && other->second != panel) call(cell, other->first, dx, dy);
        }
}

struct Found {
    std::optional<Line> line;
    bool torn = false;
    int balance = 0;                   ///< cells that move and lie beyond the line, less those that lie before it
};

Found find_line(const Sheet& sheet, const Table& table, const std::set<int>& moves) {
    const std::map<Cell, Place> places = places_on(table);
    Found found;
    each_border(sheet, [&](Cell stays, Cell moving, int dx, int dy) {
        if (moves.count(sheet.panel_of.at(stays)) || !moves.count(sheet.panel_of.at(moving))) return;
        const Line line = edge_of(places.at(stays), dx, dy);
        if (found.line && !(*found.line == line)) found.torn = true;
        found.line = line;
        found.balance += beyond(places.at(moving).cell, line) ? 1 : -1;
    });
    return found;
}

/// Whether somewhere a cell of paper would have to go through another.
bool is_barred(const Sheet& sheet, const Table& table, const std::set<int>& moves, const Line& line, bool moves_beyond, bool toward) {
    for (const auto& [cell, layers] : table) {
        // Where what moves rises, nothing that stays may lie over it; where it sinks, nothing that stays under it.
        const bool rises = (beyond(cell, line) == moves_beyond) == toward;
        for (std::size_t low = 0; low < layers.size(); ++low)
            for (std::size_t high = low + 1; high < layers.size(); ++high) {
                const bool low_moves = moves.count(sheet.panel_of.at(layers[low].flat)) > 0, high_moves = moves.count(sheet.panel_of.at(layers[high].flat)) > 0;
                if (low_moves != high_moves && low_moves == rises) return true;
            }
    }
    return false;
}

Table turned(const Sheet& sheet, const Table& table, const std::set<int>& moves, const Line& line, bool moves_beyond, bool toward) {
    Table stays, comes;
    for (const auto& [cell, layers] : table)
        for (const Layer& layer : layers) {
            if (!moves.count(sheet.panel_of.at(layer.flat))) {
                stays[cell].push_back(layer);
                continue;
            }
            Layer over = layer;
            (line.upright ? over.against_x : over.against_y) ^= true;
            std::vector<Layer>& there = comes[mirrored(cell, line)];
            there.insert(there.begin(), over);  // what was lowest is highest
        }
    for (auto& [cell, layers] : comes) {
        const bool on_top = (beyond(cell, line) != moves_beyond) == toward;
        std::vector<Layer>& there = stays[cell];
        there.insert(on_top ? there.end() : there.begin(), layers.begin(), layers.end());
    }
    return stays;
}

/// Whether panels can be stacked one after the other, each below all that lie over it.
bool stackable(const Sheet& sheet, const Table& table) {
    std::set<int> left;
    for (int i = 0; i < sheet.panels; ++i) left.insert(i);
    for (int a : left)
        for (int b : left)
            if (a < b && !order(sheet, table, a, b)) return false;
    while (!left.empty()) {
        const auto lowest = std::find_if(left.begin(), left.end(), [&](int a) {
            return std::none_of(left.begin(), left.end(), [&](int b) { return b != a && *order(sheet, table, a, b) > 0; });
        });
        if (lowest == left.end()) return false;
        left.erase(lowest);
    }
    return true;
}

constexpr std::int64_t prime = 2147483647;
using Row = std::vector<std::int64_t>;

std::int64_t power(std::int64_t base, std::int64_t exponent) {
    std::int64_t result = 1;
    for (base %= prime; exponent > 0; exponent /= 2, base = base * base % prime)
        if (exponent % 2) result = result * base % prime;
    return result;
}

std::size_t rank_of(std::vector<Row> rows) {
    std::size_t rank = 0;
    for (std::size_t column = 0; !rows.empty() && column < rows[0].size() && rank < rows.size(); ++column) {
        std::size_t pivot = rank;
        while (pivot < rows.size() && rows[pivot][column] == 0) ++pivot;
        if (pivot == rows.size()) continue;
        std::swap(rows[pivot], rows[rank]);
        const std::int64_t inverse = power(rows[rank][column], prime - 2);
        for (std::size_t r = rank + 1; r < rows.size(); ++r) {
            const std::int64_t factor = rows[r][column] * inverse % prime;
            for (std::size_t c = column; factor && c < rows[r].size(); ++c) rows[r][c] = ((rows[r][c] - factor * rows[rank][c]) % prime + prime) % prime;
        }
        ++rank;
    }
    return rank;
}

Row same_height(int panels, int a, int b, int x, int y) {
    Row row(static_cast<std::size_t>(panels) * 3);
    const std::int64_t terms[3] = {x, y, 1};
    for (int k = 0; k < 3; ++k) {
        row[static_cast<std::size_t>(a * 3 + k)] = ((terms[k] % prime) + prime) % prime;
        row[static_cast<std::size_t>(b * 3 + k)] = ((-terms[k] % prime) + prime) % prime;
    }
    return row;
}

Row nailed(int panels, int panel, int k) {
    Row row(static_cast<std::size_t>(panels) * 3);
    row[static_cast<std::size_t>(panel * 3 + k)] = 1;
    return row;
}

}  // namespace

Table laid_flat(const Sheet& sheet) {
    Table table;
    for (const auto& [cell, panel] : sheet.panel_of) table[cell].push_back({cell, false, false});
    return table;
}

Outcome fold(const Sheet& sheet, Table& table, const std::set<int>& moves, bool toward) {
    const Found found = find_line(sheet, table, moves);
    if (!found.line || found.torn) return Outcome::torn;
    if (found.balance == 0) return Outcome::unclear;
    const bool moves_beyond = found.balance > 0;
    if (is_barred(sheet, table, moves, *found.line, moves_beyond, toward)) return Outcome::barred;
    Table after = turned(sheet, table, moves, *found.line, moves_beyond, toward);
    if (!stackable(sheet, after)) return Outcome::barred;
    table = std::move(after);
    return Outcome::folded;
}

std::optional<int> order(const Sheet& sheet, const Table& table, int a, int b) {
    int found = 0;
    for (const auto& [cell, layers] : table) {
        std::optional<std::size_t> of_a, of_b;
        for (std::size_t i = 0; i < layers.size(); ++i) {
            if (sheet.panel_of.at(layers[i].flat) == a) of_a = i;
            if (sheet.panel_of.at(layers[i].flat) == b) of_b = i;
        }
        if (!of_a || !of_b) continue;
        const int here = *of_a > *of_b ? 1 : -1;
        if (found != 0 && found != here) return std::nullopt;
        found = here;
    }
    return found;
}

std::set<Cell> covered(const Sheet& sheet, const Table& table, int panel, bool back_side, const std::set<int>& covering) {
    std::set<Cell> cells;
    for (const auto& [cell, layers] : table)
        for (std::size_t i = 0; i < layers.size(); ++i) {
            if (sheet.panel_of.at(layers[i].flat) != panel) continue;
            const bool faces_up = layers[i].back_up() == back_side;
            for (std::size_t j = 0; j < layers.size(); ++j)
                if (j != i && (j > i) == faces_up && covering.count(sheet.panel_of.at(layers[j].flat))) cells.insert(layers[i].flat);
        }
    return cells;
}

std::set<int> held_to(const Sheet& sheet, const Table& closed, const std::set<std::pair<int, int>>& folded,
                      const std::vector<std::pair<int, int>>& glued, int panel) {
    std::vector<Row> rows;
    const std::map<Cell, Place> places = places_on(closed);
    each_border(sheet, [&](Cell one, Cell other, int dx, int dy) {
        const int a = sheet.panel_of.at(one), b = sheet.panel_of.at(other);
        if (a > b) return;
        const Line line = edge_of(places.at(one), dx, dy);
        const Cell at = places.at(one).cell;
        const Cell from = line.upright ? Cell{line.at, at.second} : Cell{at.first, line.at};
        const Cell to = line.upright ? Cell{line.at, at.second + 1} : Cell{at.first + 1, line.at};
        rows.push_back(same_height(sheet.panels, a, b, from.first, from.second));
        rows.push_back(same_height(sheet.panels, a, b, to.first, to.second));
        if (!folded.count({a, b})) rows.push_back(same_height(sheet.panels, a, b, from.first + 5, from.second + 7));  // beside the line
    });
    for (const auto& [a, b] : glued)
        for (const Cell& at : {Cell{0, 0}, Cell{1, 0}, Cell{0, 1}}) rows.push_back(same_height(sheet.panels, a, b, at.first, at.second));
    for (int k = 0; k < 3; ++k) rows.push_back(nailed(sheet.panels, panel, k));
    const std::size_t rank = rank_of(rows);
    std::set<int> held;
    for (int other = 0; other < sheet.panels; ++other) {
        std::vector<Row> more = rows;
        for (int k = 0; k < 3; ++k) more.push_back(nailed(sheet.panels, other, k));
        if (rank_of(more) == rank) held.insert(other);
    }
    return held;
}

}  // namespace grid
