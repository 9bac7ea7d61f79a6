// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_sorts.h"

#include <optional>
#include <vector>

namespace qw::journal::cutting {

/// How one held board is divided: a tree of parts. Part 0 is the board.
struct Layout {
    struct Part {
        Rect rect;
        std::optional<std::size_t> sort;   ///< a piece of that sort and of just this size; nothing: divided or left over
        bool across = false;
        Length at;
        std::size_t first = 0, second = 0; ///< the parts it is cut into, below or left first; 0: not cut
    };
    HeldBoard board;
    std::vector<Part> parts;

    explicit Layout(const HeldBoard& on) : board(on), parts{Part{Rect::of(on.size), {}, false, {}, 0, 0}} {}
    /// Divides a part; a cut along its edge is none, and the other half is then the part itself. Returns the lower or
    /// left part.
    std::size_t cut(std::size_t part, bool across, Length at);
};

/// The piece's number for every piece of every sort, in the order in which they are handed out.
class PieceNumbers {
public:
    explicit PieceNumbers(const std::vector<Sort>& sorts) : sorts_(sorts), taken_(sorts.size()) {}
    std::size_t next(std::size_t sort) { return sorts_[sort].pieces[taken_[sort]++]; }

private:
    const std::vector<Sort>& sorts_;
    std::vector<std::size_t> taken_;
};

/// The layout as people see it: the board as it is named, not as it was held.
CutBoard cut_board_of(const Layout& layout, const std::vector<CutPiece>& pieces, PieceNumbers& numbers);

}  // namespace qw::journal::cutting
