// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_flow.h"

#include <memory>
#include <utility>

namespace qw::compose {

Length Flow::height() const {
    Length sum;
    for (const FlowRow& row : rows_) sum += row.height;
    return sum;
}

void Flow::space(Length height) { rows_.push_back({height, {}, false}); }

void Flow::paragraph(const std::string& words, const Setting& setting, Length width) {
    const auto lines = wrapped(fonts_, setting, width, words);
    const Length below_top = (setting.leading + fonts_.cap_height(setting.cut, setting.size)) / 2;
    for (std::size_t i = 0; i < lines.size(); ++i)
        rows_.push_back({setting.leading, [=, line = lines[i]](Canvas& canvas, Point at) { canvas.words({at.x, at.y - below_top}, line, setting); },
                         lines.size() > 1 && (i == 0 || i + 2 == lines.size())});
}

void Flow::append(const Flow& other, Length indent, const std::function<void(Canvas&, Point, Length)>& decorate) {
    for (const FlowRow& row : other.rows_) {
        const auto draw = [=, inner = row.draw, height = row.height](Canvas& canvas, Point at) {
            if (decorate) decorate(canvas, at, height);
            if (inner) inner(canvas, {at.x + indent, at.y});
        };
        rows_.push_back({row.height, row.draw || decorate ? draw : std::function<void(Canvas&, Point)>(), row.with_next});
    }
}

void Flow::beside(Flow left, Flow right, Length right_from) {
    const Length height = max(left.height(), right.height());
    rows_.push_back({height, [left = std::move(left), right = std::move(right), right_from](Canvas& canvas, Point at) {
                         left.draw(canvas, at);
                         right.draw(canvas, {at.x + right_from, at.y});
                     }, false});
}

void Flow::keep_with_next() {
    if (!rows_.empty()) rows_.back().with_next = true;
}

void Flow::draw(Canvas& canvas, Point at) const {
    for (const FlowRow& row : rows_) {
        if (row.draw) row.draw(canvas, at);
        at.y -= row.height;
    }
}

namespace {

Length room_below_title(Sheet sheet, const std::string& title) {
    sheet.new_page(title);
    return sheet.left_over();
}

}  // namespace

FlowPages::FlowPages(Sheet& sheet, std::string further_title)
    : sheet_(sheet), further_title_(std::move(further_title)), whole_page_(room_below_title(sheet, further_title_)) {}

void FlowPages::new_page(const std::string& title) {
    sheet_.new_page(title);
    at_top_ = true;
}

void FlowPages::place(const FlowRow& row) {
    if (at_top_ && !row.draw) return;  // white between two things is none between a title and a thing
    if (row.draw) row.draw(sheet_.canvas(), {sheet_.content().left, sheet_.top()});
    sheet_.down(row.height);
    at_top_ = false;
}

void FlowPages::keep(const Flow& flow) {
    if (flow.height() > sheet_.left_over()) new_page();
    for (const FlowRow& row : flow.rows()) place(row);
}

void FlowPages::run(const Flow& flow, const std::string& title) {
    const auto& rows = flow.rows();
    for (std::size_t first = 0; first < rows.size();) {
        std::size_t last = first;
        Length group = rows[first].height;
        while (rows[last].with_next && last + 1 < rows.size()) group += rows[++last].height;
        // White at the foot of a page may hang over; nothing stands in it.
        if (group > sheet_.left_over() && rows[first].draw && !at_top_) new_page(title);
        for (; first <= last; ++first) {
            if (rows[first].height > sheet_.left_over() && rows[first].draw && !at_top_) new_page(title);
            place(rows[first]);
        }
    }
}

}  // namespace qw::compose
