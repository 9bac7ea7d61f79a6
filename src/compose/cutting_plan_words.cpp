// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cutting_plan_words.h"

#include "base/words.h"
#include "compose/fractions.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::compose {

namespace {

bool same_board(const journal::BoardPlan& a, const journal::BoardPlan& b) { return a.board.name == b.board.name; }

UnitSystem second_ruler(UnitSystem ruler) { return ruler == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }

bool known_grain(const kit::Board& board) { return board.grain == "height" || board.grain == "width"; }

}  // namespace

std::string CuttingPlanWords::shown(Size size) const { return real_fractions(show(size.width, size.height, ruler_)); }

std::vector<PieceLabel> CuttingPlanWords::labels(const journal::Measures& measures) const {
    std::vector<PieceLabel> labels;
    for (const journal::CutPiece& piece : journal::board_pieces(measures))
        labels.push_back({piece.title, shown(piece.size), real_fractions(measures.piece(piece.name)->text(second_ruler(ruler_)))});
    return labels;
}

std::vector<std::string> CuttingPlanWords::how_to(bool grain_matters) const {
    const bool metric = ruler_ == UnitSystem::metric;
    texts::Model model;
    model.text("own-ruler", words_.line(metric ? "metric" : "us")).text("other-ruler", words_.line(metric ? "us" : "metric"));
    std::vector<std::string> said{words_.line("how-to", model), words_.line("smaller-prints"), cautions()};
    if (grain_matters) said.insert(said.begin() + 1, words_.line("finding-grain"));
    return said;
}

std::string CuttingPlanWords::cautions() const {
    std::string said;
    const auto knife = std::find_if(pipeline_.tools.begin(), pipeline_.tools.end(), [](const kit::Tool& t) { return t.name == "craft-knife"; });
    for (const kit::Caution& caution : pipeline_.cautions) {
        const bool of_knife = knife != pipeline_.tools.end() &&
                              std::find(knife->cautions.begin(), knife->cautions.end(), caution.name) != knife->cautions.end();
        if (caution.always || of_knife) said += (said.empty() ? "" : " ") + caution.text;
    }
    return said;
}

std::string CuttingPlanWords::alternatives(const std::vector<journal::BoardPlan>& plans) const {
    std::vector<std::string> kinds;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        const bool two_ways = i + 1 < plans.size() && same_board(plans[i], plans[i + 1]);
        const journal::CuttingPlan &plan = plans[i].plan, &other = plans[i + (two_ways ? 1 : 0)].plan;
        if (two_ways) ++i;
        if (!plan.not_cut.empty()) continue;
        texts::Model model;
        model.text("number", std::to_string(plan.boards.size())).text("other-number", std::to_string(other.boards.size()));
        model.text("board", real_fractions(plans[i].board.title)).truth("by-grain", other.not_cut.empty() && plan.boards.size() != other.boards.size());
        kinds.push_back(words_.line("alternative", model));
    }
    if (kinds.size() < 2) return "";
    std::string all;
    for (const std::string& kind : kinds) all += (all.empty() ? "" : words_.line("or") + " ") + kind;
    return words_.line("alternatives", texts::Model().text("boards", all));
}

std::string CuttingPlanWords::title(const journal::BoardPlan& plan) const {
    const std::string name = real_fractions(plan.board.title), size = shown(plan.board.size);
    texts::Model model;
    model.text("board", name).text("size", size).truth("sized", name.find(size) == std::string::npos);
    model.truth("with-grain", !plan.grain.empty() && !known_grain(plan.board)).text("side", side(plan.board, plan.grain));
    return words_.line("plan-title", model);
}

std::string CuttingPlanWords::side(const kit::Board& board, const std::string& grain) const {
    const Length own = grain == "height" ? board.size.height : board.size.width, across = grain == "height" ? board.size.width : board.size.height;
    if (own == across) return words_.line(grain == "height" ? "height-of-board" : "width-of-board");
    return words_.line(own > across ? "longer-side" : "shorter-side");
}

std::string CuttingPlanWords::grain_sentence(const journal::BoardPlan& plan) const {
    const bool cares = std::any_of(plan.plan.boards.begin(), plan.plan.boards.end(), [](const journal::CutBoard& b) { return b.grain != "any"; });
    const auto model = texts::Model().text("side", side(plan.board, plan.grain));
    if (!plan.grain.empty() && !known_grain(plan.board)) return words_.line(plan.plan.boards.empty() ? "grain-not-that-way" : "grain-unknown", model);
    if (!cares) return "";
    return plan.grain.empty() ? words_.line("grain-square") : words_.line("grain-known", model);
}

std::string CuttingPlanWords::number_sentence(const journal::CuttingPlan& plan) const {
    if (plan.boards.empty()) return "";
    if (plan.boards.size() == 1) return words_.line("one-board");
    return words_.line(plan.exact ? "proven" : "not-proven", texts::Model().text("number", std::to_string(plan.boards.size())));
}

std::string CuttingPlanWords::left_out(const std::vector<int>& numbers) const {
    std::vector<std::string> listed_numbers;
    for (const int number : numbers) listed_numbers.push_back(std::to_string(number));
    return numbers.empty() ? "" : words_.line("numbers-left-out", texts::Model().text("numbers", listed(listed_numbers, words_.line("and"))));
}

std::string CuttingPlanWords::left_out(const journal::NotCut& not_cut, const journal::CutPiece& piece) const {
    texts::Model model;
    model.text("piece", piece.title).text("size", shown(piece.size)).text("count", std::to_string(not_cut.count));
    if (not_cut.because == journal::NotCut::Because::no_board_left) return words_.line("no-board-left", model);
    const bool wide = not_cut.lacking.width > Length(), high = not_cut.lacking.height > Length();
    model.truth("wide", wide).truth("high", high).truth("both", wide && high).truth("against", not_cut.fits_against_grain);
    model.text("width", real_fractions(show(not_cut.lacking.width, ruler_))).text("height", real_fractions(show(not_cut.lacking.height, ruler_)));
    return words_.line("too-large", model);
}

std::vector<std::string> CuttingPlanWords::sentences(const journal::BoardPlan& plan, const std::vector<journal::CutPiece>& pieces) const {
    const std::string number = number_sentence(plan.plan), grain = grain_sentence(plan);
    std::vector<std::string> said{number + (number.empty() || grain.empty() ? "" : " ") + grain};
    for (const journal::NotCut& not_cut : plan.plan.not_cut) said.push_back(left_out(not_cut, pieces[not_cut.piece]));
    if (said.front().empty()) said.erase(said.begin());
    return said;
}

std::string CuttingPlanWords::over_drawing(const journal::CutBoard& board, double smaller, std::size_t first, std::size_t last, std::size_t of) const {
    char scale[16];
    std::snprintf(scale, sizeof scale, "%g", smaller);
    texts::Model model;
    model.text("scale", scale).text("first", std::to_string(first)).text("last", std::to_string(last)).text("of", std::to_string(of));
    model.text("used", std::to_string(std::lround(board.used * 100))).truth("several", of > 1);
    return words_.line(first == last ? "board-one" : "board-alike", model);
}

}  // namespace qw::compose
