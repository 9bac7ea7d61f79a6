// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_plan.h"

#include "journal/cutting_exact.h"
#include "journal/cutting_greedy.h"

#include <algorithm>

namespace qw::journal {

namespace {

using namespace cutting;

Length beyond(Length needed, Length there) { return max(needed - there, Length()); }

/// What of a piece stands out where it lies on a board, upright or on its side.
Size lacking_on(const CutPiece& piece, Size board, bool turned) {
    const Size room = turned ? board.turned() : board;
    return {beyond(piece.size.width, room.width), beyond(piece.size.height, room.height)};
}

bool may_lie(const CutPiece& piece, const kit::Board& board, bool turned) {
    const auto known = [](const std::string& grain) { return grain == "height" || grain == "width"; };
    return !known(piece.grain) || !known(board.grain) || (piece.grain == board.grain) != turned;
}

NotCut too_large(std::size_t index, const CutPiece& piece, const std::vector<BoardSupply>& supply) {
    NotCut left_out{NotCut::Because::larger_than_every_board, index, piece.count, 0, {}, false};
    std::optional<Length> least;
    for (std::size_t b = 0; b < supply.size(); ++b)
        for (const bool turned : {false, true}) {
            const Size lacking = lacking_on(piece, supply[b].board.size, turned);
            if (!may_lie(piece, supply[b].board, turned)) {
                left_out.fits_against_grain = left_out.fits_against_grain || lacking == Size{};
                continue;
            }
            const Length sum = lacking.width + lacking.height;
            if (least && *least <= sum) continue;
            least = sum;
            left_out.board = b;
            left_out.lacking = lacking;
        }
    return left_out;
}

class Planning {
public:
    Planning(const std::vector<CutPiece>& pieces, const std::vector<BoardSupply>& supply)
        : pieces_(pieces), supply_(supply),
          boards_(held_boards(supply, std::any_of(pieces.begin(), pieces.end(), [](const CutPiece& p) { return p.grain == "height" || p.grain == "width"; }))) {}

    CuttingPlan plan() {
        sorts_ = sorts_of(those_that_fit());
        std::vector<Layout> layouts = laid_out();
        std::stable_sort(layouts.begin(), layouts.end(), [](const Layout& a, const Layout& b) { return covered(a) > covered(b); });
        PieceNumbers numbers(sorts_);
        for (const Layout& layout : layouts) made_.boards.push_back(cut_board_of(layout, pieces_, numbers));
        tell_left_out();
        return std::move(made_);
    }

private:
    /// The pieces as asked, of which those that fit on no board have the count 0.
    std::vector<CutPiece> those_that_fit() {
        std::vector<CutPiece> fitting = pieces_;
        for (std::size_t i = 0; i < fitting.size(); ++i) {
            if (fitting[i].count <= 0) continue;
            const auto sort = sorts_of({fitting[i]}).front();
            if (std::any_of(boards_.begin(), boards_.end(), [&](const HeldBoard& b) { return fits(sort, b); })) continue;
            made_.not_cut.push_back(too_large(i, fitting[i], supply_));
            fitting[i].count = 0;
        }
        return fitting;
    }

    std::vector<Layout> laid_out() {
        if (Selections(sorts_).few()) {
            made_.exact = true;
            return exact_layouts(sorts_, boards_, supply_);
        }
        std::vector<Layout> layouts = greedy_layouts(sorts_, boards_, supply_);
        made_.exact = all_in(layouts) && layouts.size() == fewest_thinkable(sorts_, boards_, supply_);
        return layouts;
    }

    bool all_in(const std::vector<Layout>& layouts) const {
        std::size_t wanted = 0, there = 0;
        for (const Sort& sort : sorts_) wanted += sort.pieces.size();
        for (const Layout& layout : layouts)
            there += static_cast<std::size_t>(std::count_if(layout.parts.begin(), layout.parts.end(), [](const auto& p) { return p.sort.has_value(); }));
        return wanted == there;
    }

    static double covered(const Layout& layout) {
        double sum = 0;
        for (const Layout::Part& part : layout.parts)
            if (part.sort) sum += area_of(part.rect.size());
        return sum / layout.board.area();
    }

    void tell_left_out() {
        std::vector<int> left(pieces_.size());
        for (std::size_t i = 0; i < pieces_.size(); ++i) left[i] = std::max(pieces_[i].count, 0);
        for (const NotCut& told : made_.not_cut) left[told.piece] = 0;
        for (const CutBoard& board : made_.boards)
            for (const PlacedPiece& placed : board.pieces) --left[placed.piece];
        for (std::size_t i = 0; i < left.size(); ++i)
            if (left[i] > 0) made_.not_cut.push_back({NotCut::Because::no_board_left, i, left[i], 0, {}, false});
    }

    const std::vector<CutPiece>& pieces_;
    const std::vector<BoardSupply>& supply_;
    std::vector<HeldBoard> boards_;
    std::vector<Sort> sorts_;
    CuttingPlan made_;
};

}  // namespace

CuttingPlan cutting_plan(const std::vector<CutPiece>& pieces, const std::vector<BoardSupply>& supply) {
    return Planning(pieces, supply).plan();
}

}  // namespace qw::journal
