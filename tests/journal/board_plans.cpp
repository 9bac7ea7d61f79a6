// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/board_plans.h"

#include "journal/example.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;

namespace {

/// Two boards, a spine strip of the stock "spine", a liner of paper and a piece of which there is none.
example::Template covers() {
    example::Template t;
    t.length("edge", Length::mm(3.2), Length::inches(0.13)).length("strip", Length::mm(15), Length::inches(0.625));
    t.piece("board", "2", "page_width + edge", "page_height + edge").piece("spine", "1", "strip", "page_height + edge");
    t.piece("liner", "2", "page_width", "page_height").piece("extra", "0", "strip", "strip");
    t.made.pieces[0].grain = t.made.pieces[1].grain = "height";
    t.made.pieces[1].stock = "spine";
    t.made.pieces[2].stock = "cover";
    return t;
}

}  // namespace

TEST_CASE("what is cut from board has the sizes that people are told, with the paper's own ruler") {
    const auto t = covers();
    auto conditions = example::conditions(example::a4());
    const auto metric = journal::board_pieces(journal::compute(t.made, conditions));
    REQUIRE(metric.size() == 2);
    CHECK(metric[0].name == "board");
    CHECK(metric[0].count == 2);
    CHECK(metric[0].grain == "height");
    CHECK(metric[0].size == Size{Length::mm(152), Length::mm(213.5)});  // 151.7 and 213.2 mm, upward
    CHECK(metric[1].size.width == Length::mm(15));
    const auto us = journal::board_pieces(journal::compute(t.made, example::conditions(example::letter())));
    CHECK(us.at(0).size == Size{Length::inches(5.6875), Length::inches(8.6875)});  // 5.63 and 8.63 in

    conditions.spine_stock.name = "another";
    CHECK(journal::board_pieces(journal::compute(t.made, conditions)).size() == 1);
}

TEST_CASE("the cuts of full size work at every smaller print: the same plan or one with fewer boards") {
    const auto t = covers();
    const kit::Board board{"a4", "A4", {Length::mm(210), Length::mm(297)}, "height"};
    std::size_t most = 0;
    for (int percent = 30; percent <= 103; percent += 1) {
        const auto measures = journal::compute(t.made, example::conditions(example::a4(), percent / 100.0));
        const auto plans = journal::board_plans(journal::board_pieces(measures), {board});
        REQUIRE(plans.size() == 1);
        CHECK(plans[0].plan.not_cut.empty());
        CHECK(plans[0].plan.boards.size() >= most);
        most = std::max(most, plans[0].plan.boards.size());
    }
    CHECK(most == 2);
}
