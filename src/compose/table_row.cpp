// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/table_row.h"

namespace qw::compose {

namespace {

/// A dot between two of a row of figures stays with the first of them at the end of a line.
std::vector<std::string> wrapped_list(const type::Fonts& fonts, const Setting& setting, Length width, std::string words) {
    auto lines = wrapped(fonts, setting, width, words);
    if (lines.size() < 2 || words.find(" · ") == std::string::npos) return lines;
    for (std::size_t at = words.find(" · "); at != std::string::npos; at = words.find(" · ", at + 1)) words.replace(at, 1, "\u00a0");
    return wrapped(fonts, setting, width, words);
}

}  // namespace

TableCell& TableCell::add(const std::string& words, const Setting& setting) {
    if (!words.empty()) parts.push_back({words, setting});
    return *this;
}

Length TableColumns::left_of(std::size_t column) const {
    Length left;
    for (std::size_t i = 0; i < column; ++i) left += widths.at(i) + gap;
    return left;
}

Length TableColumns::width_of(std::size_t column, const TableCell& cell) const {
    if (cell.to_the_edge) return whole - left_of(column);
    return left_of(column + cell.span) - gap - left_of(column);
}

TableRow::TableRow(const type::Fonts& fonts, const TableColumns& columns, const std::vector<TableCell>& cells) {
    std::size_t column = 0;
    for (const TableCell& cell : cells) {
        Cell laid{columns.left_of(column), {}, {}};
        Length down;
        for (const TableCell::Part& part : cell.parts) {
            const Length cap = fonts.cap_height(part.setting.cut, part.setting.size), descent = fonts.descent(part.setting.cut, part.setting.size);
            bool first_of_part = true;
            for (const std::string& words : wrapped_list(fonts, part.setting, columns.width_of(column, cell), part.words)) {
                if (laid.lines.empty()) rise_ = max(rise_, cap);
                else down += first_of_part ? laid.fall - laid.lines.back().down + columns.between_parts + cap : part.setting.leading;
                laid.lines.push_back({words, part.setting, down});
                laid.fall = down + descent;
                first_of_part = false;
            }
        }
        fall_ = max(fall_, laid.fall);
        cells_.push_back(std::move(laid));
        column += cell.span;
    }
}

void TableRow::draw(Canvas& canvas, Point top_left, bool on_last_line) const {
    for (const Cell& cell : cells_) {
        const Length first = top_left.y - rise_ - (on_last_line ? fall_ - cell.fall : Length());
        for (const Line& line : cell.lines) canvas.words({top_left.x + cell.x, first - line.down}, line.words, line.setting);
    }
}

}  // namespace qw::compose
