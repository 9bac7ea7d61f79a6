// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cover_drawing.h"
#include "compose/flat_cover.h"
#include "compose/sample_kit.h"

#include "base/fault.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

journal::Measures measures(const std::string& journal, const std::string& paper, double percent = 100) {
    const auto manifest = test::sample_manifest(journal);
    return journal::compute(test::pipeline().journals.at(journal), test::sample_conditions(manifest, test::paper(paper), Print::borderless, percent));
}

}  // namespace

TEST_CASE("the opened cover lies as wide as its pieces and gaps") {
    // Common practice, no source: boards 153 × 216 mm, spine strip 15 mm, gaps 1 mm, stations at 40, 108, 176 mm.
    const FlatCover flat = flat_cover(measures("soft-spine", "a4"));
    CHECK(flat.size == Size{323_mm, 216_mm});
    REQUIRE(flat.boards.size() == 2);
    CHECK(flat.boards[0] == Rect{0_mm, 0_mm, 153_mm, 216_mm});
    CHECK(flat.boards[1].left == 170_mm);
    REQUIRE(flat.spine);
    CHECK(flat.spine->left == 154_mm);
    CHECK(flat.spine->width() == 15_mm);
    REQUIRE(flat.tape);
    CHECK(flat.tape->centre().x == flat.size.width / 2);
    CHECK(flat.tape->height() == 216_mm);  // its ends are folded in
    CHECK(flat.stations == std::vector<Length>{40_mm, 108_mm, 176_mm});
}

TEST_CASE("a smaller print keeps the spine strip and the gaps") {
    const FlatCover half = flat_cover(measures("soft-spine", "a4", 50));
    CHECK(half.spine->width() == 15_mm);
    CHECK(half.gap == 1_mm);
    CHECK(half.size.height < 216_mm);
}

TEST_CASE("boards lie inside a cover paper that is folded round the pages") {
    const FlatCover flat = flat_cover(measures("wrapped-booklet", "letter"));
    REQUIRE(flat.paper);
    CHECK(*flat.paper == Rect::of(flat.size));
    CHECK(flat.fold == flat.size.width / 2);
    for (const Rect& board : flat.boards) CHECK(flat.paper->holds(board));
    CHECK(flat.boards[0].right < *flat.fold);
    CHECK(flat.boards[1].left > *flat.fold);
}

TEST_CASE("a picture that is not known, or that lacks a piece, is refused by name") {
    kit::JournalTemplate journal = test::pipeline().journals.at("soft-spine");
    auto m = measures("soft-spine", "a4");
    m.journal = &journal;
    journal.picture = "exploded";
    CHECK_THROWS_AS(flat_cover(m), Fault);
    journal.picture = "opened-cover";
    m.pieces.erase(m.pieces.begin());
    CHECK_THROWS_AS(flat_cover(m), Fault);
}

TEST_CASE("the drawing stays in its room at its stated scale, and is left out where there is none") {
    const auto m = measures("soft-spine", "a4");
    const auto words = passages_of(test::pipeline(), "drawings");
    Canvas canvas({210_mm, 297_mm}, test::fonts());
    const Rect room{20_mm, 40_mm, 190_mm, 140_mm};
    REQUIRE(draw_cover(canvas, room, m, words));
    const Page page = std::move(canvas).finish();
    Length widest;
    for (const Item& item : page.items) {
        if (const auto* text = std::get_if<Text>(&item); text && text->words.starts_with("Drawn at")) CHECK(text->words == "Drawn at 1 : 3.5");
        const auto* outline = std::get_if<Outline>(&item);
        if (!outline) continue;
        for (const auto& step : outline->steps)
            if (const auto* line = std::get_if<Outline::Line>(&step)) {
                CHECK(room.holds(Rect::at(line->to, {}), Length::mm(0.1)));
                if (outline->stroke == weight::heavy) widest = max(widest, line->to.x);
            }
    }
    CHECK(widest > room.left);
    Canvas small({210_mm, 297_mm}, test::fonts());
    CHECK(!draw_cover(small, {20_mm, 40_mm, 60_mm, 60_mm}, m, words));
    CHECK(std::move(small).finish().items.empty());
}
