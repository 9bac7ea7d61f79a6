// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cut_list.h"

#include "compose/fractions.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length list_figures = Length::mm(7), list_gap = Length::mm(3), cut_row = Length::mm(5.8), letter_row = Length::mm(9.6), second_row = Length::mm(7.8);

}  // namespace

std::size_t CutList::rows() const { return lettered_.size() + std::max<std::size_t>(cuts().size(), 1); }

Length CutList::height_of_row(std::size_t row) const { return row < lettered_.size() ? letter_row : cut_row; }

Length CutList::height() const {
    Length sum;
    for (std::size_t row = 0; row < rows(); ++row) sum += height_of_row(row);
    return sum;
}

std::string CutList::distance(const journal::StraightCut& cut) const {
    return real_fractions(show(cut.at - (cut.across ? cut.of.bottom : cut.of.left), ruler_));
}

std::string CutList::from_where(const journal::StraightCut& cut) const { return picture_.words.line(cut.across ? "cut-across" : "cut-up"); }

Length CutList::figures_width(const Canvas& canvas) const {
    Length widest;
    for (const auto& cut : cuts()) widest = max(widest, canvas.width(setting::table_figure, distance(cut)));
    return widest;
}

Length CutList::width(const Canvas& canvas) const {
    if (cuts().empty()) return canvas.width(setting::small, picture_.words.line("no-cut"));
    Length widest;
    for (const auto& cut : cuts()) widest = max(widest, figures_width(canvas) + list_gap + canvas.width(setting::small, from_where(cut)));
    for (const std::size_t piece : lettered_) {
        const PieceLabel& label = picture_.labels[piece];
        widest = max(widest, canvas.width(setting::label, label.title) + list_gap + canvas.width(setting::table_figure, label.own));
    }
    return list_figures + widest;
}

void CutList::draw_letter(Canvas& canvas, Point top_left, Length room, std::size_t lettered) const {
    const PieceLabel& label = picture_.labels[lettered_[lettered]];
    const Setting& set = setting::table_figure;
    const Length base = top_left.y - cut_row / 2 - canvas.fonts().cap_height(set.cut, set.size) / 2, x = top_left.x + list_figures;
    canvas.words({top_left.x + cut_number_radius(10), base}, letter_of(lettered), setting::label, Canvas::Anchor::middle);
    const Length title = min(canvas.width(setting::label, label.title), room - list_figures - list_gap - canvas.width(set, label.own));
    canvas.words_within({x, base}, title, label.title, setting::label);
    canvas.words({x + title + list_gap, base}, label.own, set);
    canvas.words({x, top_left.y - second_row}, label.other, setting::other);
}

void CutList::draw_row(Canvas& canvas, Point top_left, Length room, std::size_t row) const {
    if (row < lettered_.size()) return draw_letter(canvas, top_left, room, row);
    const Setting& set = setting::table_figure;
    const Length middle = top_left.y - cut_row / 2, base = middle - canvas.fonts().cap_height(set.cut, set.size) / 2;
    if (cuts().empty()) return canvas.words({top_left.x, base}, picture_.words.line("no-cut"), setting::small);
    const std::size_t number = row - lettered_.size();
    cut_number(canvas, {top_left.x + cut_number_radius(10), middle}, static_cast<int>(number) + 1);
    canvas.words({top_left.x + list_figures, base}, distance(cuts()[number]), set);
    canvas.words({top_left.x + list_figures + figures_width(canvas) + list_gap, base}, from_where(cuts()[number]), setting::small);
}

void CutList::draw(Canvas& canvas, Point top_left, Length room) const {
    for (std::size_t row = 0; row < rows(); ++row) {
        draw_row(canvas, top_left, room, row);
        top_left.y -= height_of_row(row);
    }
}

}  // namespace qw::compose
