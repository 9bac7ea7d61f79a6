// SPDX-License-Identifier: GPL-3.0-or-later
// Printing both sides by hand: pages in the right order, arrows that point the right way.
#include "compose/reload_drawing.h"

#include "compose/print_check_sheet.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

TEST_CASE("page numbers are told by their first ones and the last") {
    CHECK(page_numbers(1, 1) == "1");
    CHECK(page_numbers(1, 7) == "1, 3, 5, 7");
    CHECK(page_numbers(1, 23) == "1, 3, 5 … 23");
    CHECK(page_numbers(2, 24) == "2, 4, 6 … 24");
    CHECK(page_numbers(24, 2) == "24, 22, 20 … 2");
    CHECK(page_numbers(4, 2) == "4, 2");
}

namespace {

struct ArrowSeen {
    bool up = false, dotted = false;
};

/// The shaft is the only vertical line inside the sheet; the tip of its head lies beyond one of its ends.
ArrowSeen arrow_of(Duplex turned) {
    static const texts::Passages words = passages_of(test::pipeline(), "print-check");
    Canvas canvas({100_mm, 100_mm}, test::fonts());
    draw_sheet_going_in(canvas, {20_mm, 20_mm, 80_mm, 90_mm}, {210_mm, 297_mm}, turned, words);
    const Page page = std::move(canvas).finish();
    std::optional<Outline> shaft;
    Length highest;
    for (const Item& item : page.items) {
        const auto* o = std::get_if<Outline>(&item);
        if (!o || o->steps.size() != 2) continue;
        const Point from = std::get<Outline::Move>(o->steps[0]).to, to = std::get<Outline::Line>(o->steps[1]).to;
        if (from.x == to.x && from.x == 50_mm && !shaft) shaft = *o;
        highest = max(highest, max(from.y, to.y));
    }
    REQUIRE(shaft);
    const Point foot = std::get<Outline::Move>(shaft->steps[0]).to, neck = std::get<Outline::Line>(shaft->steps[1]).to;
    return {neck.y > foot.y, !shaft->dash.empty()};
}

}  // namespace

TEST_CASE("the arrow points into the printer, and away from it where the other short edge goes in") {
    // A sheet that turns over its long edge keeps the edge that goes in first; over its short edge the other one does.
    CHECK(arrow_of(Duplex::simplex).up);
    CHECK_FALSE(arrow_of(Duplex::simplex).dotted);
    CHECK(arrow_of(Duplex::flip_long_edge).up);
    CHECK(arrow_of(Duplex::flip_long_edge).dotted);
    CHECK_FALSE(arrow_of(Duplex::flip_short_edge).up);
    CHECK(arrow_of(Duplex::flip_short_edge).dotted);
}

TEST_CASE("each duplex file of the kit is told with its pages, and sheets of one side need no such page") {
    const auto manifest = test::sample_manifest("soft-spine");
    const SheetContext context{manifest, test::pipeline(), test::paper("a4"), test::fonts(), {}};
    const auto texts = test::texts_of(print_check_sheet(
        context, {Duplex::flip_short_edge, {100}, {{"pockets", 12, Duplex::flip_short_edge}, {"tags", 4, Duplex::flip_long_edge}}}));
    for (const char* words : {"pockets", "1, 3, 5 … 11", "2, 4, 6 … 12", "12, 10, 8 … 2", "tags", "1, 3", "2, 4", "4, 2"})
        CHECK(std::find(texts.begin(), texts.end(), words) != texts.end());
    CHECK(print_check_sheet(context, {Duplex::simplex, {100}}).pages.size() == 1);
}
