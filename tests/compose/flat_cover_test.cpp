// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cover_dimensions.h"
#include "compose/cover_drawing.h"
#include "compose/flat_cover.h"
#include "compose/fractions.h"
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

/// A figure of a drawing, read as a buyer reads it.
Length read(const std::string& figure) {
    CAPTURE(figure);
    const auto length = read_length(plain_fractions(figure));
    REQUIRE(length);
    return *length;
}

struct Told {
    FlatCover flat;
    CoverDimensions all;
    const texts::Passages& words;

    std::string figure(const std::string& passage, const std::string& piece = "") const {
        const std::string said = words.line(passage, texts::Model().text("piece", piece).text("count", std::to_string(flat.rows.size())));
        for (const Remark& remark : all.remarks)
            if (remark.words == said) return remark.figure;
        return {};
    }
    bool says(const std::string& passage) const {
        return std::any_of(all.remarks.begin(), all.remarks.end(), [&](const Remark& r) { return r.words == words.line(passage); });
    }
};

/// What is shown of the parts from one end of the cover to the other, added up.
Length parts_across(const Told& told, const journal::Measures& m) {
    Length sum;
    for (const Span& span : told.all.across) sum += read(span.figure);
    if (told.flat.spine) sum += read(told.figure("width-of", m.piece("spine")->of->title));
    if (told.flat.panel) sum += read(told.figure("spine-panel"));
    for (const std::string gap : {"hinge-gap", "joint"})
        if (const std::string figure = told.figure(gap); !figure.empty()) sum += read(figure) * 2;
    return sum;
}

/// Half of the last digit that is shown: 0.01 mm, and 1/64 in.
Length half_a_digit(UnitSystem ruler) { return ruler == UnitSystem::metric ? 0.005_mm : Length::inches(1.0 / 128); }

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

TEST_CASE("what a drawing of the cover shows of the parts adds up to what it shows of the whole", "[many]") {
    const auto words = passages_of(test::pipeline(), "drawings");
    for (const auto& [journal, templ] : test::pipeline().journals)
        for (const Paper& paper : test::sheet_papers())
            for (const double percent : {103.0, 100.0, 97.0, 94.0, 91.3, 87.5, 75.0, 66.0, 50.0, 41.0, 30.0}) {
                const auto m = measures(journal, paper.short_name, percent);
                CAPTURE(journal, paper.short_name, percent);
                const FlatCover flat = flat_cover(m);
                const Told told{flat, cover_dimensions(flat, m, words), words};
                const Length near = half_a_digit(m.ruler);
                CHECK(told.all.whole.size() == (flat.zigzag ? 0u : 1u));  // a concertina's boards do not hang together
                for (const Span& whole : told.all.whole) {
                    CHECK(abs(read(whole.figure) - (whole.to - whole.from)) <= near);
                    if (told.says("left-beside-fold")) CHECK(parts_across(told, m) <= read(whole.figure));
                    else CHECK(abs(parts_across(told, m) - read(whole.figure)) <= near);
                }
                for (const Span& part : told.all.across) CHECK(abs(read(part.figure) - (part.to - part.from)) <= near);
                if (!flat.turned_in.empty())  // the paper stands out over head and tail of the board
                    CHECK(abs(read(told.all.up.front().figure) + read(told.figure("turn-in")) * 2 - m.piece("cover-paper")->height.rounded) <= near);
                if (flat.panel && flat.rows.size() > 1) {
                    const auto* edge = m.figure("edge-to-row");
                    REQUIRE(edge);
                    const Length rows = read(told.figure("rows")) * static_cast<double>(flat.rows.size() - 1);
                    CHECK(abs(rows + edge->length.rounded * 2 - read(told.figure("spine-panel"))) <= near);
                }
            }
}

TEST_CASE("the sides of a soft cover are told as exactly as half of an uneven rest asks for") {
    auto m = measures("long-stitch", "a4");
    auto& cover = const_cast<journal::Piece&>(*m.piece("soft-cover"));
    cover.width.rounded = cover.width.metric = 324.5_mm;
    m.named["spine-width"] = 14_mm;
    const FlatCover flat = flat_cover(m);
    const auto all = cover_dimensions(flat, m, passages_of(test::pipeline(), "drawings"));
    REQUIRE(all.across.size() == 2);
    CHECK(all.across[0].figure == "155.25 mm");
    CHECK(all.across[1].figure == "155.25 mm");
    CHECK(all.whole[0].figure == "324.5 mm");
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
