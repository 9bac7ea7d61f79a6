// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/piece_label.h"
#include "journal/cutting_plan.h"
#include "texts/passages.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// One board of a cutting plan and what its drawing says. `labels` go by the pieces' numbers in the plan.
struct CutBoardPicture {
    const journal::CutBoard& board;
    Size size;
    const std::vector<PieceLabel>& labels;
    const texts::Passages& words;         ///< pipeline/texts/cutting-plan.mustache
};

/// What stands round the board: the grain's arrow at the left or below, numbers of cuts that have no room on it.
struct RoundBoard {
    static constexpr Length left = Length::mm(6.5), right = Length::mm(5.5), above = Length::mm(6), below = Length::mm(6.5);
};

struct DrawnBoard {
    Length height;
    std::vector<std::size_t> lettered;    ///< pieces that are drawn with a letter: A, B, …
    /// What had no place, where very many small pieces are drawn very small: numbers of cuts (the lines are drawn), letters.
    std::vector<int> numbers_left_out;
    int letters_left_out = 0;
    std::size_t left_out() const { return numbers_left_out.size() + static_cast<std::size_t>(letters_left_out); }
};

/// Draws a board `smaller` times smaller than it is: pieces white with their labels, what is left over grey, every cut
/// as a heavy line with its number. A piece that is too small for its label is named below the board, with a leader;
/// several have letters, which the list explains.
/// No words touch others or a line. Draws between `top_left` and `right`, and as far down as it needs. Returns
/// nothing when the board is too wide or more than `most_left_out` numbers and letters find no place; as it may have drawn
/// some of it by then, it is tried on a scratch canvas.
std::optional<DrawnBoard> draw_cut_board(Canvas& canvas, Point top_left, Length right, double smaller, const CutBoardPicture& picture,
                                         std::size_t most_left_out);

/// The number of a cut in its circle, as on the drawing.
void cut_number(Canvas& canvas, Point centre, int number);
Length cut_number_radius(int number);
/// "A" for 0.
std::string letter_of(std::size_t lettered);

}  // namespace qw::compose
