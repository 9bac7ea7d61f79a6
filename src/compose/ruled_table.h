// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"

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

/// A table with rules between its rows, drawn at the sheet's cursor, which moves below it. First lines of a row stand on
/// one baseline, last lines of the head on another. A table that is longer than the page goes on on the next, with its
/// head; a row is never divided.
class RuledTable {
public:
    /// Columns from the left edge of the content, `gap` between them; together no wider than the content.
    RuledTable(Sheet& sheet, std::vector<Length> widths, Length gap);

    void head(std::vector<TableCell> cells) { head_ = std::move(cells); }
    /// `rule`: the weight of the line above the row.
    void row(std::vector<TableCell> cells, Length rule = weight::hair) { rows_.push_back({std::move(cells), rule}); }
    /// What stands above the table, on the page on which it begins: a heading, and sentences below it.
    void introduce(std::string heading, std::vector<std::string> sentences, const Setting& setting = setting::small);
    /// Room above and below the words of a row: `least`, or as much more, up to `most`, as lets the page hold all rows.
    void airy(Length least, Length most) { least_ = least, most_ = most; }
    /// Pages take as many rows as they hold, instead of about the same number each.
    void fill_pages() { even_pages_ = false; }
    /// Between the parts of a cell.
    void parts_apart(Length by) { between_parts_ = by; }
    /// What the page of the last rows keeps free below the table.
    void keep_free(Length below) { kept_free_ = below; }

    /// Of the whole table, at the least room between its rows.
    Length least_height() const;

    /// Begins a page of its own when that spares a division. `page_title` is the title of every page that it begins; the
    /// first of them does without the heading when that says the same.
    void draw(const std::string& page_title);

private:
    struct Line { std::string words; Setting setting; Length down; };  ///< baseline below the first line's
    struct Row { std::vector<TableCell> cells; Length rule; };

    std::vector<Line> lines_of(const TableCell& cell, Length width) const;
    Length left_of(std::size_t column) const;
    Length width_of(std::size_t column, const TableCell& cell) const;
    Length rise(const std::vector<TableCell>& cells) const;
    Length fall(const std::vector<TableCell>& cells) const;
    Length height(const std::vector<TableCell>& cells) const { return rise(cells) + fall(cells); }
    Length introduction_height() const;
    bool better_begun_anew(const std::string& page_title) const;
    void introduction(bool with_heading);
    void words(const std::vector<TableCell>& cells, Length pad, bool on_last_line);
    void rule(Length weight);
    Length head_height() const;
    std::size_t rows_here(std::size_t from, Length room) const;
    void page(std::size_t from, std::size_t to);

    Sheet& sheet_;
    std::vector<Length> widths_;
    Length gap_, between_parts_ = Length::mm(0.8), kept_free_;
    Length least_ = Length::mm(1.1), most_ = Length::mm(1.1), pad_ = most_;
    bool even_pages_ = true;
    std::string heading_;
    std::vector<std::string> sentences_;
    Setting sentence_setting_ = setting::small;
    std::vector<TableCell> head_;
    std::vector<Row> rows_;
};

/// What a further page of a sheet holds below this title.
Length room_of_further_page(const SheetContext& context, const std::string& title);

}  // namespace qw::compose
