// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What stands in one field of a table: parts below each other, each set in its own way and wrapped to the field.
struct TableCell {
    struct Part {
        std::string words;
        Setting setting;
    };
    std::vector<Part> parts;
    std::size_t span = 1;              ///< how many columns it takes
    bool to_the_edge = false;          ///< goes on to the right edge of the content, beyond the last column

    TableCell() = default;
    TableCell(const std::string& words, const Setting& setting) : parts{{words, setting}} {}
    /// Empty words add nothing.
    TableCell& add(const std::string& words, const Setting& setting);
    TableCell& over(std::size_t columns) { span = columns; return *this; }
    TableCell& over_the_rest() { to_the_edge = true; return *this; }
};

/// The columns of a table, from its left edge.
struct TableColumns {
    std::vector<Length> widths;
    Length gap;                        ///< between columns
    Length whole;                      ///< what a cell to the edge reaches
    Length between_parts = Length::mm(0.8);

    Length left_of(std::size_t column) const;
    Length width_of(std::size_t column, const TableCell& cell) const;
    /// Of the columns together.
    Length width() const { return left_of(widths.size()) - gap; }
};

/// A row that is laid out: its cells' first lines stand on one baseline.
class TableRow {
public:
    TableRow() = default;
    TableRow(const type::Fonts& fonts, const TableColumns& columns, const std::vector<TableCell>& cells);

    /// From the top of the capitals of its first lines to below the descenders of its last.
    Length height() const { return rise_ + fall_; }
    /// With its top left corner there; all last lines on one baseline where `on_last_line`.
    void draw(Canvas& canvas, Point top_left, bool on_last_line) const;

private:
    struct Line {
        std::string words;
        Setting setting;
        Length down;                   ///< baseline below the first line's
    };
    struct Cell {
        Length x, fall;                ///< from the row's left edge; from its first baseline to below its descenders
        std::vector<Line> lines;
    };
    Length rise_, fall_;               ///< above and below the first baseline
    std::vector<Cell> cells_;
};

}  // namespace qw::compose
