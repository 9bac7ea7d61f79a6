// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/ruled_table.h"

#include <algorithm>
#include <utility>

namespace qw::compose {

namespace {

const Length below_heading = Length::mm(4.2), rule_below_heading = Length::mm(2.2), below_sentence = Length::mm(1.2);
/// Parts of a page: one that has no room for so much of a long table is left as it is; one with a title and no more.
constexpr double least_part_of_page = 0.3, nearly_whole_page = 0.85;

}  // namespace

RuledTable::RuledTable(Sheet& sheet, std::vector<Length> widths, Length gap, Length between_parts)
    : sheet_(sheet), columns_{std::move(widths), gap, sheet.content().width(), between_parts} {}

void RuledTable::head(const std::vector<TableCell>& cells) { head_ = TableRow(sheet_.context().fonts, columns_, cells); }

void RuledTable::row(const std::vector<TableCell>& cells, Length rule) { rows_.push_back({TableRow(sheet_.context().fonts, columns_, cells), rule}); }

void RuledTable::rule(Length weight) {
    const Rect area = sheet_.content();
    sheet_.canvas().line({area.left, sheet_.top()}, {area.left + columns_.width(), sheet_.top()}, weight);
}

void RuledTable::words(const TableRow& row, Length pad, bool on_last_line) {
    row.draw(sheet_.canvas(), {sheet_.content().left, sheet_.top() - pad}, on_last_line);
    sheet_.down(row.height() + pad * 2);
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

Length RuledTable::head_height() const { return head_ ? head_->height() + least_ * 2 : Length(); }

/// How many rows, from `from` on, the page takes at the least distance.
std::size_t RuledTable::rows_here(std::size_t from, Length room) const {
    room -= head_height();
    std::size_t to = from;
    while (to < rows_.size() && (room -= rows_[to].row.height() + least_ * 2) >= Length()) ++to;
    return to - from;
}

void RuledTable::page(std::size_t from, std::size_t to) {
    Length used = head_height();
    for (std::size_t i = from; i < to; ++i) used += rows_[i].row.height();
    pad_ = max(least_, min(pad_, (sheet_.left_over() - kept_free_ - used) / (2.0 * static_cast<double>(to - from))));
    if (head_) words(*head_, least_, true);
    for (std::size_t i = from; i < to; ++i) {
        // A heading has its own rule.
        if (i > 0 || head_ || heading_.empty() || !sentences_.empty()) rule(i == from ? weight::line : rows_[i].rule);
        words(rows_[i].row, pad_, false);
    }
    rule(weight::line);
}

Length RuledTable::least_height() const {
    Length all = introduction_height() + head_height();
    for (const Row& row : rows_) all += row.row.height() + least_ * 2;
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

void RuledTable::draw_rows(std::size_t from, std::size_t to, Length air) {
    pad_ = air;
    page(from, to);
}

Length room_of_further_page(const SheetContext& context, const std::string& title) {
    Sheet tried(context, "", "", PrintAt::full_size);
    tried.new_page(title);
    return tried.left_over();
}

}  // namespace qw::compose
