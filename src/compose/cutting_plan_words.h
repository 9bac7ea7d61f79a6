// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/piece_label.h"
#include "compose/sheet.h"
#include "journal/board_plans.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What the cutting plan says of a kind of board and of a piece, from the passages of pipeline/texts/cutting-plan.mustache.
class CuttingPlanWords {
public:
    explicit CuttingPlanWords(const SheetContext& context)
        : pipeline_(context.pipeline), words_(passages_of(context.pipeline, "cutting-plan")), ruler_(context.paper.ruler) {}

    const texts::Passages& passages() const { return words_; }
    UnitSystem ruler() const { return ruler_; }

    std::vector<PieceLabel> labels(const journal::Measures& measures) const;
    /// "Take one of these: …"; empty when there is only one kind of board.
    std::string alternatives(const std::vector<journal::BoardPlan>& plans) const;
    std::string title(const journal::BoardPlan& plan) const;
    /// How many boards, and how their grain runs; then what does not come out of them.
    std::vector<std::string> sentences(const journal::BoardPlan& plan, const std::vector<journal::CutPiece>& pieces) const;
    /// Over the drawing of boards `first` to `last` of `of`.
    std::string over_drawing(const journal::CutBoard& board, double smaller, std::size_t first, std::size_t last, std::size_t of) const;
    /// Of numbers of cuts that are not on the drawing; empty when none is missing.
    std::string left_out(const std::vector<int>& numbers) const;
    /// What stands at the head of the sheet: how to use it, and the cautions of the shared data that go with a craft knife.
    std::vector<std::string> how_to(bool grain_matters) const;

private:
    std::string number_sentence(const journal::CuttingPlan& plan) const;
    std::string grain_sentence(const journal::BoardPlan& plan) const;
    std::string cautions() const;
    std::string side(const kit::Board& board, const std::string& grain) const;
    std::string left_out(const journal::NotCut& not_cut, const journal::CutPiece& piece) const;
    std::string shown(Size size) const;

    const kit::Pipeline& pipeline_;
    texts::Passages words_;
    UnitSystem ruler_;
};

}  // namespace qw::compose
