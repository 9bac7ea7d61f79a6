// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/ruled_table.h"

#include <algorithm>
#include <utility>

namespace qw::compose {

namespace {

const Length below_heading = Length::mm(4.2), rule_below_heading = Length::mm(2.2), below_sentence = Length::mm(1.2);
/// Parts of a page: one that has no room for so much of a long table is left as it is; one with a title and no more.
constexpr double least_part_of_page = 0.3, nearly_whole_page = 0.85;

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

RuledTable::RuledTable(Sheet& sheet, std::vector<Length> widths, Length gap) : sheet_(sheet), widths_(std::move(widths)), gap_(gap) {}

/// From the left edge of the content.
Length RuledTable::left_of(std::size_t column) const {
    Length left;
    for (std::size_t i = 0; i < column; ++i) left += widths_.at(i) + gap_;
    return left;
}

Length RuledTable::width_of(std::size_t column, const TableCell& cell) const {
    if (cell.to_the_edge) return sheet_.content().width() - left_of(column);
    return left_of(column + cell.span) - gap_ - left_of(column);
}

std::vector<RuledTable::Line> RuledTable::lines_of(const TableCell& cell, Length width) const {
    const type::Fonts& fonts = sheet_.context().fonts;
    std::vector<Line> lines;
    Length down;
    for (const TableCell::Part& part : cell.parts) {
        bool first_of_part = true;
        for (const std::string& words : wrapped_list(fonts, part.setting, width, part.words)) {
            if (!lines.empty()) {
                const Setting& before = lines.back().setting;
                down += first_of_part ? fonts.descent(before.cut, before.size) + between_parts_ + fonts.cap_height(part.setting.cut, part.setting.size)
                                      : part.setting.leading;
            }
            lines.push_back({words, part.setting, down});
            first_of_part = false;
        }
    }
    return lines;
}

/// From the top of the row's words to the first baseline.
Length RuledTable::rise(const std::vector<TableCell>& cells) const {
    Length most;
    for (const TableCell& cell : cells)
        if (!cell.parts.empty()) most = max(most, sheet_.context().fonts.cap_height(cell.parts.front().setting.cut, cell.parts.front().setting.size));
    return most;
}

/// From the first baseline to below the last descenders.
Length RuledTable::fall(const std::vector<TableCell>& cells) const {
    Length most;
    std::size_t column = 0;
    for (const TableCell& cell : cells) {
        const auto lines = lines_of(cell, width_of(column, cell));
        if (!lines.empty()) most = max(most, lines.back().down + sheet_.context().fonts.descent(lines.back().setting.cut, lines.back().setting.size));
        column += cell.span;
    }
    return most;
}

void RuledTable::rule(Length weight) {
    const Rect area = sheet_.content();
    sheet_.canvas().line({area.left, sheet_.top()}, {area.left + left_of(widths_.size()) - gap_, sheet_.top()}, weight);
}

void RuledTable::words(const std::vector<TableCell>& cells, Length pad, bool on_last_line) {
    const Length first = sheet_.top() - pad - rise(cells), deepest = fall(cells);
    std::size_t column = 0;
    for (const TableCell& cell : cells) {
        const Length x = sheet_.content().left + left_of(column);
        const auto lines = lines_of(cell, width_of(column, cell));
        const Length hang = on_last_line && !lines.empty()
                                ? deepest - lines.back().down - sheet_.context().fonts.descent(lines.back().setting.cut, lines.back().setting.size)
                                : Length();
        for (const Line& line : lines) sheet_.canvas().words({x, first - hang - line.down}, line.words, line.setting);
        column += cell.span;
    }
    sheet_.down(height(cells) + pad * 2);
}

void RuledTable::introduce(std::string heading, std::vector<std::string> sentences, const Setting& setting) {
    sentence_setting_ = setting;
    heading_ = std::move(heading);
    sentences_ = std::move(sentences);
}

Length RuledTable::introduction_height() const {
    const type::Fonts& fonts = sheet_.context().fonts;
    Length height = heading_.empty() ? Length() : fonts.cap_height(setting::heading.cut, setting::heading.size) + below_heading;
    for (const std::string& sentence : sentences_)
        height += sentence_setting_.leading * static_cast<double>(wrapped(fonts, sentence_setting_, sheet_.content().width(), sentence).size()) + below_sentence;
    return height;
}

void RuledTable::introduction(bool with_heading) {
    if (with_heading && !heading_.empty()) {
        sheet_.heading(heading_);
        sheet_.down(below_heading - rule_below_heading);
    }
    for (const std::string& sentence : sentences_)
        sheet_.down(sheet_.canvas().paragraph({sheet_.content().left, sheet_.top()}, sheet_.content().width(), sentence, sentence_setting_) + below_sentence);
}

Length RuledTable::head_height() const { return head_.empty() ? Length() : height(head_) + least_ * 2; }

/// How many rows, from `from` on, the page takes at the least distance.
std::size_t RuledTable::rows_here(std::size_t from, Length room) const {
    room -= head_height();
    std::size_t to = from;
    while (to < rows_.size() && (room -= height(rows_[to].cells) + least_ * 2) >= Length()) ++to;
    return to - from;
}

void RuledTable::page(std::size_t from, std::size_t to) {
    Length used = head_height();
    for (std::size_t i = from; i < to; ++i) used += height(rows_[i].cells);
    pad_ = max(least_, min(pad_, (sheet_.left_over() - kept_free_ - used) / (2.0 * static_cast<double>(to - from))));
    if (!head_.empty()) words(head_, least_, true);
    for (std::size_t i = from; i < to; ++i) {
        // A heading has its own rule.
        if (i > 0 || !head_.empty() || heading_.empty() || !sentences_.empty()) rule(i == from ? weight::line : rows_[i].rule);
        words(rows_[i].cells, pad_, false);
    }
    rule(weight::line);
}

Length RuledTable::least_height() const {
    Length all = introduction_height() + head_height();
    for (const Row& row : rows_) all += height(row.cells) + least_ * 2;
    return all;
}

/// A short table is not divided, and a long one does not begin at the foot of a page.
bool RuledTable::better_begun_anew(const std::string& page_title) const {
    const Length page = room_of_further_page(sheet_.context(), page_title), needed = least_height() + kept_free_;
    if (needed <= sheet_.left_over() || sheet_.left_over() >= page * nearly_whole_page) return false;
    return needed <= page || sheet_.left_over() < page * least_part_of_page;
}

void RuledTable::draw(const std::string& page_title) {
    if (rows_.empty()) return;
    const bool anew = better_begun_anew(page_title);
    if (anew) sheet_.new_page(page_title);
    introduction(!anew || heading_ != page_title);
    pad_ = most_;
    for (std::size_t from = 0; from < rows_.size();) {
        const std::size_t left = rows_.size() - from, fit = std::max<std::size_t>(rows_here(from, sheet_.left_over() - kept_free_), 1);
        const std::size_t pages = (left + fit - 1) / fit, here = even_pages_ ? (left + pages - 1) / pages : fit;
        page(from, from + here);
        from += here;
        if (from < rows_.size()) sheet_.new_page(page_title);
    }
}

Length room_of_further_page(const SheetContext& context, const std::string& title) {
    Sheet tried(context, "", "", PrintAt::full_size);
    tried.new_page(title);
    return tried.left_over();
}

}  // namespace qw::compose
