// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/materials_columns.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length before_heading = Length::mm(7), below_heading = Length::mm(2);
/// From the cursor to the first entry.
const Length heading_room = before_heading + setting::heading.leading + below_heading;

}  // namespace

Length height_of(const StackedWords& stack, const type::Fonts& fonts, Length width) {
    Length height;
    for (const SetWords& one : stack) height += one.setting.leading * static_cast<double>(wrapped(fonts, one.setting, width, one.words).size());
    return height;
}

Length draw(Canvas& canvas, Point top_left, Length width, const StackedWords& stack) {
    Length y = top_left.y;
    for (const SetWords& one : stack) y -= canvas.paragraph({top_left.x, y}, width, one.words, one.setting);
    return top_left.y - y;
}

void draw_tick(Canvas& canvas, Point top_left) {
    const Length size = Length::mm(3), lowest = Length::mm(4.7);
    canvas.frame(Rect::at({top_left.x, top_left.y - lowest}, {size, size}), weight::line);
}

Length EntryColumns::column_width() const {
    const auto columns = static_cast<double>(look_.columns);
    return (sheet_.content().width() - look_.gutter * (columns - 1)) / columns;
}

Length EntryColumns::height_of_entry(std::size_t i) const {
    return height_of(entries_[i], sheet_.context().fonts, column_width() - look_.tick) + look_.below;
}

std::vector<std::size_t> EntryColumns::filled(std::size_t first, std::size_t last, Length height) const {
    std::vector<std::size_t> ends;
    std::size_t i = first;
    while (i < last && ends.size() < look_.columns) {
        Length taken = height_of_entry(i++);  // one entry at least, or the work would never end
        while (i < last && taken + height_of_entry(i) <= height) taken += height_of_entry(i++);
        ends.push_back(i);
    }
    return i == last ? ends : std::vector<std::size_t>();
}

std::vector<std::size_t> EntryColumns::spread(std::size_t first, std::size_t last) const {
    // The least height of columns is the height of some run of entries.
    std::vector<Length> heights;
    for (std::size_t from = first; from < last; ++from) {
        Length run;
        for (std::size_t i = from; i < last; ++i) heights.push_back(run += height_of_entry(i));
    }
    std::sort(heights.begin(), heights.end());
    const auto least = std::partition_point(heights.begin(), heights.end(), [&](Length height) { return filled(first, last, height).empty(); });
    return least == heights.end() ? std::vector<std::size_t>() : filled(first, last, *least);
}

Length EntryColumns::highest(std::size_t first, const std::vector<std::size_t>& ends) const {
    Length most;
    for (std::size_t i = first; const std::size_t end : ends) {
        Length height;
        for (; i < end; ++i) height += height_of_entry(i);
        most = max(most, height);
    }
    return most;
}

std::size_t EntryColumns::last_that_fits(std::size_t first, Length height) const {
    std::size_t last = first + 1;
    while (last < entries_.size() && highest(first, spread(first, last + 1)) <= height) ++last;
    return last;
}

bool EntryColumns::fit_below() const {
    return heading_room + highest(0, spread(0, entries_.size())) <= sheet_.left_over();
}

void EntryColumns::draw_page(std::size_t first, const std::vector<std::size_t>& ends) {
    std::size_t i = first;
    for (std::size_t column = 0; column < ends.size(); ++column) {
        const Length x = sheet_.content().left + (column_width() + look_.gutter) * static_cast<double>(column);
        Length y = sheet_.top();
        for (; i < ends[column]; ++i) {
            if (look_.tick > Length()) draw_tick(sheet_.canvas(), {x, y});
            compose::draw(sheet_.canvas(), {x + look_.tick, y}, column_width() - look_.tick, entries_[i]);
            y -= height_of_entry(i);
        }
    }
    sheet_.down(highest(first, ends));
}

void EntryColumns::draw() {
    if (entries_.empty()) return;
    const bool below = fit_below();
    if (below) {
        sheet_.down(before_heading);
        sheet_.heading(title_);
        sheet_.down(below_heading);
    }
    for (std::size_t first = 0; first < entries_.size();) {
        if (!below) sheet_.new_page(title_);
        const std::size_t last = below ? entries_.size() : last_that_fits(first, sheet_.left_over());
        draw_page(first, spread(first, last));
        first = last;
    }
}

}  // namespace qw::compose
