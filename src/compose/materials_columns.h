// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"

#include <string>
#include <vector>

namespace qw::compose {

/// Words in one setting, below each other in a column.
struct SetWords {
    std::string words;
    Setting setting;
};
using StackedWords = std::vector<SetWords>;

/// Sum of the leadings of all lines, in a column that is so wide.
Length height_of(const StackedWords& stack, const type::Fonts& fonts, Length width);
/// Draws it down from `top_left`; returns its height.
Length draw(Canvas& canvas, Point top_left, Length width, const StackedWords& stack);

/// Entries that are read down the columns of a page, then on the next page: tools, cautions. On each page columns are
/// about equally high.
class EntryColumns {
public:
    struct Look {
        std::size_t columns = 2;
        Length tick;               ///< room for a box to tick off before each entry; zero: none
        Length gutter, below;      ///< between columns, and below each entry
    };

    EntryColumns(Sheet& sheet, std::string title, const Look& look) : sheet_(sheet), title_(std::move(title)), look_(look) {}

    void add(StackedWords entry) { entries_.push_back(std::move(entry)); }
    /// Whether heading and columns fit below what is on the page.
    bool fit_below() const;
    /// A heading and the columns, on pages of their own where they do not fit below.
    void draw();

private:
    Length column_width() const;
    Length height_of_entry(std::size_t i) const;
    /// How entries from `first` to before `last` are spread: the index after each column's last entry.
    std::vector<std::size_t> spread(std::size_t first, std::size_t last) const;
    /// Index after the last entry that fits into columns of that height; empty when there are more than columns.
    std::vector<std::size_t> filled(std::size_t first, std::size_t last, Length height) const;
    Length highest(std::size_t first, const std::vector<std::size_t>& ends) const;
    /// How many entries from `first` on find room in that height.
    std::size_t last_that_fits(std::size_t first, Length height) const;
    void draw_page(std::size_t first, const std::vector<std::size_t>& ends);

    Sheet& sheet_;
    std::string title_;
    Look look_;
    std::vector<StackedWords> entries_;
};

/// A box to tick off, beside the first line of what begins at `top_left`.
void draw_tick(Canvas& canvas, Point top_left);

}  // namespace qw::compose
