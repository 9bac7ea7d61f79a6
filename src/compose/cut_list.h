// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/cut_board_drawing.h"

#include <utility>

namespace qw::compose {

/// The list beside or below a board's drawing: what its letters mean, and the cuts: number, distance large enough to
/// measure from, and from which edge of the part.
class CutList {
public:
    CutList(const CutBoardPicture& picture, std::vector<std::size_t> lettered, UnitSystem ruler)
        : picture_(picture), lettered_(std::move(lettered)), ruler_(ruler) {}

    /// A row for each letter and for each cut, or one that says that there is none.
    std::size_t rows() const;
    Length height_of_row(std::size_t row) const;
    Length height() const;
    Length width(const Canvas& canvas) const;
    /// A title that is longer than `room` lets it be is cut off.
    void draw_row(Canvas& canvas, Point top_left, Length room, std::size_t row) const;
    void draw(Canvas& canvas, Point top_left, Length room) const;

private:
    std::string distance(const journal::StraightCut& cut) const;
    std::string from_where(const journal::StraightCut& cut) const;
    Length figures_width(const Canvas& canvas) const;

    void draw_letter(Canvas& canvas, Point top_left, Length room, std::size_t lettered) const;
    const std::vector<journal::StraightCut>& cuts() const { return picture_.board.cuts; }

    CutBoardPicture picture_;
    std::vector<std::size_t> lettered_;
    UnitSystem ruler_;
};

}  // namespace qw::compose
