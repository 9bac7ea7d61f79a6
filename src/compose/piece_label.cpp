// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/piece_label.h"

namespace qw::compose {

namespace {

const Length between_words = Length::mm(2), round_label = Length::mm(0.9), above_label = Length::mm(0.5);

struct LabelWords {
    const Setting* setting;
    std::string words;
};
using LabelRow = std::vector<LabelWords>;
using LabelRows = std::vector<LabelRow>;

LabelWords title_of(const PieceLabel& label) { return {&setting::label, label.title}; }
LabelWords own_of(const PieceLabel& label) { return {&setting::table_figure, label.own}; }
LabelWords other_of(const PieceLabel& label) { return {&setting::other, label.other}; }

/// Best first.
std::vector<LabelRows> arrangements(const PieceLabel& label) {
    const LabelWords title = title_of(label), own = own_of(label), other = other_of(label);
    return {{{title}, {own}, {other}}, {{title, own}, {other}}, {{title}, {own, other}}, {{title, own, other}}, {{title, own}}};
}

class LabelBlock {
public:
    LabelBlock(Canvas& canvas, const LabelRows& rows) : canvas_(canvas), rows_(rows) {
        for (const LabelRow& row : rows_) size_.width = max(size_.width, width(row));
        size_.height = cap(rows_.front()) + descent(rows_.back());
        for (std::size_t i = 1; i < rows_.size(); ++i) size_.height += leading(rows_[i]);
    }

    Size size() const { return size_; }

    /// About a centre, read from below or, turned, from the right.
    void set(ClearSpace& space, Point centre, bool turned) {
        Length up = size_.height / 2 - cap(rows_.front());
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            if (i > 0) up -= leading(rows_[i]);
            set(rows_[i], centre, up, -width(rows_[i]) / 2, turned);
        }
        const Size box = turned ? size_.turned() : size_;
        space.take(Rect::at({centre.x - box.width / 2, centre.y - box.height / 2}, box));
    }

private:
    template <typename Of> static Length most(const LabelRow& row, Of&& of) {
        Length largest;
        for (const LabelWords& part : row) largest = max(largest, of(*part.setting));
        return largest;
    }
    Length cap(const LabelRow& row) const {
        return most(row, [&](const Setting& s) { return canvas_.fonts().cap_height(s.cut, s.size); });
    }
    Length descent(const LabelRow& row) const {
        return most(row, [&](const Setting& s) { return canvas_.fonts().descent(s.cut, s.size); });
    }
    static Length leading(const LabelRow& row) {
        return most(row, [](const Setting& s) { return s.leading; });
    }
    Length width(const LabelRow& row) const {
        Length sum = between_words * static_cast<double>(row.size() - 1);
        for (const LabelWords& part : row) sum += canvas_.width(*part.setting, part.words);
        return sum;
    }

    void set(const LabelRow& row, Point centre, Length up, Length along, bool turned) {
        for (const LabelWords& part : row) {
            const Point at = turned ? Point{centre.x - up, centre.y + along} : Point{centre.x + along, centre.y + up};
            canvas_.words(at, part.words, *part.setting, Canvas::Anchor::start, turned ? 90 : 0);
            along += canvas_.width(*part.setting, part.words) + between_words;
        }
    }

    Canvas& canvas_;
    const LabelRows& rows_;
    Size size_;
};

LabelRows in_a_row(const PieceLabel& label) { return {{title_of(label), own_of(label), other_of(label)}}; }

}  // namespace

bool set_on_piece(Canvas& canvas, ClearSpace& space, const Rect& piece, const PieceLabel& label) {
    for (const LabelRows& rows : arrangements(label)) {
        LabelBlock block(canvas, rows);
        for (const bool turned : {false, true}) {
            const Size box = turned ? block.size().turned() : block.size();
            const Rect room = turned ? piece.inset(above_label, round_label) : piece.inset(round_label, above_label);
            if (box.width > room.width() || box.height > room.height()) continue;
            block.set(space, piece.centre(), turned);
            return true;
        }
    }
    return false;
}

Size size_in_a_row(const Canvas& canvas, const PieceLabel& label) {
    Canvas scratch(canvas.size(), canvas.fonts());
    const LabelRows rows = in_a_row(label);
    return LabelBlock(scratch, rows).size();
}

void set_in_a_row(Canvas& canvas, ClearSpace& space, Point corner, const PieceLabel& label) {
    const LabelRows rows = in_a_row(label);
    LabelBlock block(canvas, rows);
    block.set(space, {corner.x + block.size().width / 2, corner.y + block.size().height / 2}, false);
}

}  // namespace qw::compose
