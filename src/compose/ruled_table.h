// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "compose/table_row.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// A table with rules between its rows, drawn at the sheet's cursor, which moves below it. First lines of a row stand on
/// one baseline, last lines of the head on another. A table that is longer than the page goes on on the next, with its
/// head; a row is never divided.
class RuledTable {
public:
    /// Columns from the left edge of the content, `gap` between them; together no wider than the content.
    RuledTable(Sheet& sheet, std::vector<Length> widths, Length gap, Length between_parts = Length::mm(0.8));

    void head(const std::vector<TableCell>& cells);
    /// `rule`: the weight of the line above the row.
    void row(const std::vector<TableCell>& cells, Length rule = weight::hair);
    /// What stands above the table, on the page on which it begins: a heading, and sentences below it.
    void introduce(std::string heading, std::vector<std::string> sentences, const Setting& setting = setting::small);
    /// Room above and below the words of a row: `least`, or as much more, up to `most`, as lets the page hold all rows.
    void airy(Length least, Length most) { least_ = least, most_ = most; }
    /// Pages take as many rows as they hold, instead of about the same number each.
    void fill_pages() { even_pages_ = false; }
    /// What the page of the last rows keeps free below the table.
    void keep_free(Length below) { kept_free_ = below; }

    /// Of the whole table, of its head, and of one row, at the least room between rows.
    Length least_height() const;
    Length head_height() const;
    Length row_height(std::size_t row) const { return rows_.at(row).row.height() + least_ * 2; }

    /// Begins a page of its own when that spares a division. `page_title` is the title of every page that it begins; the
    /// first of them does without the heading when that says the same.
    void draw(const std::string& page_title);
    /// Some of its rows, under its head, with `air` above and below their words, on the page as it is.
    void draw_rows(std::size_t from, std::size_t to, Length air);

private:
    struct Row { TableRow row; Length rule; };

    Length introduction_height() const;
    bool better_begun_anew(const std::string& page_title) const;
    void introduction(bool with_heading);
    void words(const TableRow& row, Length pad, bool on_last_line);
    void rule(Length weight);
    std::size_t rows_here(std::size_t from, Length room) const;
    void page(std::size_t from, std::size_t to);

    Sheet& sheet_;
    TableColumns columns_;
    Length kept_free_;
    Length least_ = Length::mm(1.1), most_ = Length::mm(1.1), pad_ = most_;
    bool even_pages_ = true;
    std::string heading_;
    std::vector<std::string> sentences_;
    Setting sentence_setting_ = setting::small;
    std::optional<TableRow> head_;
    std::vector<Row> rows_;
};

/// What a further page of a sheet holds below this title.
Length room_of_further_page(const SheetContext& context, const std::string& title);

}  // namespace qw::compose
