// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/board_plans.h"
#include "journal/cutting_plan_judge.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace qw;
using namespace qw::journal;
using namespace qw::literals;

namespace {

CutPiece piece(Length width, Length height, int count = 1, const std::string& grain = "any") { return {"piece", "Piece", {width, height}, count, grain}; }
BoardSupply board(Length width, Length height, const std::string& grain = "unknown", std::optional<int> most = {}) {
    return {{"board", "Board", {width, height}, grain}, most};
}
BoardSupply a4_board(const std::string& grain = "unknown") { return board(210_mm, 297_mm, grain); }

CuttingPlan legal(const std::vector<CutPiece>& pieces, const std::vector<BoardSupply>& supply) {
    CuttingPlan plan = cutting_plan(pieces, supply);
    CHECK(test::what_is_wrong(plan, pieces, supply) == "");
    return plan;
}

/// Cases by chance, the same at every run: no distribution of the library is asked, because theirs are not laid down.
class Chance {
public:
    explicit Chance(unsigned seed) : numbers_(seed) {}
    int from(int least, int most) { return least + static_cast<int>(numbers_() % static_cast<unsigned>(most - least + 1)); }
    Length mm_from(int least, int most) { return Length::mm(from(least, most)); }
    std::string grain() { return std::vector<std::string>{"any", "height", "width"}[static_cast<std::size_t>(from(0, 2))]; }
    std::string board_grain() { return std::vector<std::string>{"unknown", "height", "width"}[static_cast<std::size_t>(from(0, 2))]; }

private:
    std::mt19937 numbers_;
};

struct Case {
    std::vector<CutPiece> pieces;
    std::vector<BoardSupply> supply;
};

/// Up to six pieces that all fit, on one or two kinds of board, some of them scarce.
Case small_case(Chance& chance) {
    Case made;
    const bool grained = chance.from(0, 2) > 0;
    for (int left = chance.from(1, 6); left > 0;) {
        const int count = chance.from(1, std::min(left, 3));
        made.pieces.push_back(piece(chance.mm_from(1, 9), chance.mm_from(1, 9), count, grained ? chance.grain() : "any"));
        left -= count;
    }
    for (int kinds = chance.from(1, 2); kinds > 0; --kinds) made.supply.push_back(board(chance.mm_from(9, 14), chance.mm_from(9, 14), chance.board_grain()));
    if (chance.from(0, 1) && made.supply.size() == 2) made.supply.front().most = chance.from(1, 2);
    return made;
}

}  // namespace

TEST_CASE("on 200 small cases a plan is legal, and the best that trying everything finds", "[many]") {
    Chance chance(20260901);
    int several = 0;
    for (int n = 0; n < 200; ++n) {
        CAPTURE(n);
        const Case c = small_case(chance);
        const CuttingPlan plan = legal(c.pieces, c.supply);
        CHECK(plan.exact);
        const auto best = test::best_by_trying(c.pieces, c.supply);
        REQUIRE(best);
        const test::Merit merit = test::merit_of(plan, c.supply);
        CHECK(merit.boards == best->boards);
        CHECK(merit.area == best->area);
        CHECK(merit.remainder == best->remainder);
        several += merit.boards > 1;
    }
    CHECK(several > 40);  // else the cases would say little about sharing out
}

TEST_CASE("sheets that halve come out of each other without a remainder (ISO 216)") {
    const auto four = legal({piece(105_mm, 148.5_mm, 4)}, {a4_board()});
    REQUIRE(four.boards.size() == 1);
    CHECK(four.boards[0].used == 1);
    CHECK(four.boards[0].left_over.empty());
    CHECK(four.boards[0].cuts.size() == 3);
    CHECK(legal({piece(148.5_mm, 105_mm, 5)}, {a4_board()}).boards.size() == 2);
    CHECK(legal({piece(105_mm, 148_mm, 12)}, {a4_board()}).boards.size() == 3);
    // With the grain along the short side a halving needs board whose grain runs along its long side.
    CHECK(legal({piece(148.5_mm, 210_mm, 2, "width")}, {a4_board("height")}).boards.size() == 1);
    const auto against = legal({piece(148.5_mm, 210_mm, 2, "height")}, {a4_board("height")});
    CHECK(against.boards.size() == 2);
}

TEST_CASE("two covers and a spine strip on what shops sell") {
    const std::vector<CutPiece> inches{piece(5.625_in, 8.75_in, 2, "height"), piece(0.625_in, 8.75_in, 1, "height")};
    const auto square = legal(inches, {board(12_in, 12_in)});
    REQUIRE(square.boards.size() == 1);
    // What is left above all three is one strip of 12 × 3 1/4 in.
    CHECK(square.boards[0].left_over.front().size() == Size{12_in, 3.25_in});
    const std::vector<CutPiece> metric{piece(153_mm, 216_mm, 2, "height"), piece(15_mm, 216_mm, 1, "height")};
    CHECK(legal(metric, {a4_board()}).boards.size() == 2);
    // A3 does it when its grain runs along the short side, and not when it runs along the long one.
    CHECK(legal(metric, {board(297_mm, 420_mm, "width")}).boards.size() == 1);
    CHECK(legal(metric, {board(297_mm, 420_mm, "height")}).boards.size() == 2);
    CHECK(legal(metric, {board(297_mm, 420_mm, "unknown")}).boards.front().grain == "width");
}

TEST_CASE("pieces that only go round each other like a pinwheel need a second board") {
    CHECK(legal({piece(2_mm, 3_mm, 4), piece(1_mm, 1_mm, 1)}, {board(5_mm, 5_mm)}).boards.size() == 2);
    CHECK(legal({piece(2_mm, 3_mm, 4)}, {board(5_mm, 5_mm)}).boards.size() == 2);
    CHECK(legal({piece(2_mm, 3_mm, 4)}, {board(6_mm, 4_mm)}).boards.size() == 1);
}

TEST_CASE("what one cut takes off is kept in one part") {
    // Two strips side by side or on each other: the second way leaves 100 × 60 in one, the first 100 × 40.
    const auto plan = legal({piece(50_mm, 20_mm, 2, "width")}, {board(100_mm, 80_mm, "width")});
    CHECK(plan.boards.at(0).left_over.front().size() == Size{100_mm, 60_mm});
    // Of two boards one is left as whole as can be.
    const auto two = legal({piece(100_mm, 60_mm, 1), piece(100_mm, 20_mm, 1), piece(90_mm, 10_mm, 3)}, {board(100_mm, 80_mm)});
    REQUIRE(two.boards.size() == 2);
    CHECK(two.boards[1].left_over.front().size() == Size{100_mm, 50_mm});
}

TEST_CASE("a piece that fits on no board is told with what it lacks, and the rest is planned") {
    const std::vector<CutPiece> pieces{piece(220_mm, 300_mm, 2, "height"), piece(100_mm, 100_mm, 1)};
    const auto plan = legal(pieces, {board(100_mm, 100_mm), a4_board()});
    REQUIRE(plan.not_cut.size() == 1);
    CHECK(plan.not_cut[0].because == NotCut::Because::larger_than_every_board);
    CHECK(plan.not_cut[0].piece == 0);
    CHECK(plan.not_cut[0].count == 2);
    CHECK(plan.not_cut[0].board == 1);
    CHECK(plan.not_cut[0].lacking == Size{10_mm, 3_mm});
    CHECK(!plan.not_cut[0].fits_against_grain);
    REQUIRE(plan.boards.size() == 1);
    CHECK(plan.boards[0].board == 0);
    CHECK(plan.exact);
}

TEST_CASE("a piece that only its grain keeps from a board is told so") {
    const auto plan = legal({piece(250_mm, 150_mm, 1, "height")}, {a4_board("height")});
    REQUIRE(plan.not_cut.size() == 1);
    CHECK(plan.not_cut[0].fits_against_grain);
    CHECK(plan.not_cut[0].lacking == Size{40_mm, 0_mm});
    CHECK(legal({piece(250_mm, 150_mm, 1, "height")}, {a4_board("unknown")}).not_cut.empty());
}

TEST_CASE("where boards run out, most of the area is cut and the rest is told") {
    const std::vector<CutPiece> pieces{piece(10_mm, 10_mm, 3), piece(10_mm, 6_mm, 1)};
    const auto plan = legal(pieces, {board(10_mm, 16_mm, "unknown", 1), board(10_mm, 11_mm, "unknown", 1)});
    CHECK(plan.boards.size() == 2);
    REQUIRE(plan.not_cut.size() == 1);
    CHECK(plan.not_cut[0].because == NotCut::Because::no_board_left);
    CHECK(plan.not_cut[0].piece == 0);
    CHECK(plan.not_cut[0].count == 1);
    const auto none = legal(pieces, {board(10_mm, 16_mm, "unknown", 0)});
    CHECK(none.boards.empty());
    CHECK(none.not_cut.size() == 2);
    CHECK(legal({}, {a4_board()}).boards.empty());
    CHECK(legal({piece(1_mm, 1_mm, 0)}, {a4_board()}).boards.empty());
}

TEST_CASE("a larger board never needs more boards, and another scale or order changes nothing") {
    Chance chance(7);
    for (int n = 0; n < 60; ++n) {
        CAPTURE(n);
        std::vector<CutPiece> pieces;
        for (int i = chance.from(2, 6); i > 0; --i) pieces.push_back(piece(chance.mm_from(20, 120), chance.mm_from(20, 120), chance.from(1, 2), chance.grain()));
        const Length width = chance.mm_from(120, 200), height = chance.mm_from(120, 200);
        const std::string grain = chance.board_grain();
        const auto plan = legal(pieces, {board(width, height, grain)});
        CHECK(legal(pieces, {board(width + chance.mm_from(1, 50), height + chance.mm_from(0, 50), grain)}).boards.size() <= plan.boards.size());

        std::vector<CutPiece> scaled = pieces;
        for (CutPiece& p : scaled) p.size = p.size * 3;
        const auto larger = legal(scaled, {board(width * 3, height * 3, grain)});
        REQUIRE(larger.boards.size() == plan.boards.size());
        for (std::size_t b = 0; b < plan.boards.size(); ++b) {
            CHECK(larger.boards[b].used == plan.boards[b].used);
            REQUIRE(larger.boards[b].pieces.size() == plan.boards[b].pieces.size());
            for (std::size_t i = 0; i < plan.boards[b].pieces.size(); ++i)
                CHECK(larger.boards[b].pieces[i].at.right == plan.boards[b].pieces[i].at.right * 3);
        }
        std::reverse(pieces.begin(), pieces.end());
        CHECK(test::merit_of(legal(pieces, {board(width, height, grain)}), {board(width, height, grain)}) ==
              test::merit_of(plan, {board(width, height, grain)}));
    }
}

TEST_CASE("many pieces are planned legally, and a plan is only called proven when a bound proves it") {
    Chance chance(11);
    int proven = 0, open = 0;
    for (int n = 0; n < 40; ++n) {
        CAPTURE(n);
        std::vector<CutPiece> pieces;
        double area = 0;
        for (int i = chance.from(11, 24); i > 0; --i) {
            pieces.push_back(piece(chance.mm_from(30, 140), chance.mm_from(30, 200), 1, chance.grain()));
            area += pieces.back().size.width.in_mm() * pieces.back().size.height.in_mm();
        }
        const auto plan = legal(pieces, {a4_board()});
        CHECK(plan.not_cut.empty());
        CHECK(static_cast<double>(plan.boards.size()) * 210 * 297 >= area);
        CHECK(static_cast<double>(plan.boards.size()) * 210 * 297 <= area * 2 + 210 * 297);  // half full, or it is no good
        (plan.exact ? proven : open) += 1;
    }
    CHECK(proven > 0);
    CHECK(open > 0);
    // No two of these go on one board, and that proves twelve boards.
    std::vector<CutPiece> large;
    for (int i = 0; i < 12; ++i) large.push_back(piece(Length::mm(150 + i), Length::mm(200 + i)));
    const auto apart = legal(large, {a4_board()});
    CHECK(apart.boards.size() == 12);
    CHECK(apart.exact);
    const auto alike = legal({piece(150_mm, 200_mm, 11), piece(151_mm, 201_mm, 11), piece(152_mm, 202_mm, 11)}, {a4_board()});
    CHECK(alike.boards.size() == 33);
    CHECK(alike.exact);
}

TEST_CASE("ten different pieces are planned exactly whatever is thought of them") {
    Chance chance(3);
    for (int n = 0; n < 10; ++n) {
        std::vector<CutPiece> pieces;
        for (int i = 0; i < 10; ++i) pieces.push_back(piece(chance.mm_from(30, 110), chance.mm_from(30, 150), 1));
        const auto plan = legal(pieces, {a4_board()});
        CHECK(plan.exact);
        CHECK(plan.not_cut.empty());
    }
}

TEST_CASE("a board of unknown grain has a plan for each way it may be found") {
    const std::vector<CutPiece> pieces{piece(153_mm, 216_mm, 2, "height"), piece(15_mm, 216_mm, 1, "height")};
    const auto plans = board_plans(pieces, {board(297_mm, 420_mm).board, board(12_in, 12_in).board, a4_board("height").board});
    REQUIRE(plans.size() == 4);
    CHECK(plans[0].grain == "width");
    CHECK(plans[0].plan.boards.size() == 1);
    CHECK(plans[1].grain == "height");
    CHECK(plans[1].plan.boards.size() == 2);
    CHECK(plans[0].board.grain == "unknown");
    CHECK(plans[2].grain == "");
    CHECK(plans[3].grain == "height");
    CHECK(board_plans({piece(10_mm, 20_mm)}, {a4_board().board}).size() == 1);
}
