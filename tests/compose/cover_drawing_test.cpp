// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cover_drawing.h"

#include "compose/corner_drawing.h"
#include "compose/drawing_alone.h"
#include "compose/flat_cover.h"
#include "compose/fractions.h"
#include "compose/named_figure.h"
#include "compose/station_strip.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;
using test::check_clear;
using test::drawing;
using test::Drawing;

namespace {

void for_every_cover(const std::function<void(const kit::JournalTemplate&, const Paper&, const journal::Measures&, double)>& look) {
    for (const std::string& picture : test::all_pictures) {
        const kit::JournalTemplate journal = test::drawn_journal(picture);
        for (const Paper& paper : test::sheet_papers())
            for (const double percent : test::print_sizes) {
                CAPTURE(picture, paper.short_name, percent);
                look(journal, paper, test::drawn_measures(journal, paper, percent), percent);
            }
    }
}

}  // namespace

TEST_CASE("every cover is drawn at every size on every paper, and no label collides", "[many]") {
    for_every_cover([](const kit::JournalTemplate&, const Paper& paper, const journal::Measures& measures, double) {
        for (const Rect& room : test::rooms(paper)) {
            const Drawing made = drawing(draw_cover, room, paper, measures);
            REQUIRE(made.there);
            check_clear(made, room);
        }
    });
}

TEST_CASE("a template without a picture has no drawing of its cover") {
    const Paper& paper = test::sheet_papers()[1];
    kit::JournalTemplate journal = test::drawn_journal("opened-cover");
    journal.picture = "none";
    journal.stations.spine.clear();
    const auto m = test::drawn_measures(journal, paper, 100);
    const Drawing made = drawing(draw_cover, SheetMargins::content(paper.size), paper, m);
    CHECK(!made.there);
    CHECK(made.page.items.empty());
    CHECK(drawing(draw_stations, SheetMargins::content(paper.size), paper, m).there);
}

TEST_CASE("the cover tells all its dimensions") {
    for_every_cover([](const kit::JournalTemplate& journal, const Paper& paper, const journal::Measures& m, double) {
        const Drawing made = drawing(draw_cover, SheetMargins::content(paper.size), paper, m);
        const FlatCover flat = flat_cover(m);
        const auto told = [&](Length length) { return made.says(real_fractions(show(length, m.ruler))); };
        for (const Rect& board : flat.boards) {
            CHECK(told(board.width()));
            CHECK(told(board.height()));
        }
        if (flat.spine) CHECK(told(flat.spine->width()));
        if (flat.gap > 0_mm && !flat.fold) CHECK(told(flat.gap));
        if (flat.gap > 0_mm && flat.fold && flat.paper) CHECK(made.says(test::drawing_words().line("left-beside-fold")));
        if (flat.paper) CHECK(told(flat.size.height));
        if (journal.picture == "opened-cover" || flat.paper) CHECK(told(flat.size.width));
        if (flat.cloth) CHECK(made.says(real_fractions(m.piece("spine-cloth")->text(m.ruler))));
        if (!flat.turned_in.empty()) CHECK(made.says(real_fractions(m.piece("cover-paper")->text(m.ruler))));
        if (flat.turn_in > 0_mm) CHECK(told(flat.turn_in));
        if (flat.zigzag) CHECK(made.says(real_fractions(m.piece("guard")->text(m.ruler))));
        if (flat.panel) CHECK(made.says(named_figure(m, "spine-width", m.ruler)));
        for (const Length station : flat.stations) CHECK(told(station));
    });
}

TEST_CASE("what is cut from is said large") {
    const auto m = test::drawn_measures(test::drawn_journal("case-cover"), test::sheet_papers()[1], 100);
    const Drawing made = drawing(draw_cover, SheetMargins::content(test::sheet_papers()[1].size), test::sheet_papers()[1], m);
    for (const Text* text : made.texts())
        if (text->words.ends_with(" mm")) CHECK(text->size >= 12_pt);
}

TEST_CASE("the cover is as large as its scale says") {
    for_every_cover([](const kit::JournalTemplate&, const Paper& paper, const journal::Measures& m, double) {
        const Drawing made = drawing(draw_cover, SheetMargins::content(paper.size), paper, m);
        const FlatCover flat = flat_cover(m);
        const double smaller = test::stated_scale(made);
        REQUIRE(smaller >= 1);
        const Rect wanted = flat.boards.empty() ? Rect::of(flat.size) : flat.boards.front();
        CHECK(std::any_of(made.page.items.begin(), made.page.items.end(), [&](const Item& item) {
            const auto* o = std::get_if<Outline>(&item);
            return o && o->stroke && o->steps.size() == 5 && abs(test::box_of_outline(*o).width() - wanted.width() / smaller) < 0.01_mm &&
                   abs(test::box_of_outline(*o).height() - wanted.height() / smaller) < 0.01_mm;
        }));
    });
}

TEST_CASE("a case lies open with its joints between spine and boards, and its papers beyond the boards on three sides") {
    const auto m = test::drawn_measures(test::drawn_journal("case-cover"), test::sheet_papers()[1], 100);
    const FlatCover flat = flat_cover(m);
    REQUIRE(flat.boards.size() == 2);
    CHECK(flat.spine->left - flat.boards[0].right == 7_mm);
    CHECK(flat.boards[1].left - flat.spine->right == 7_mm);
    REQUIRE(flat.turned_in.size() == 2);
    CHECK(flat.boards[0].left - flat.turned_in[0].left == 15_mm);
    CHECK(flat.boards[0].bottom - flat.turned_in[0].bottom == 15_mm);
    CHECK(flat.turned_in[0].top - flat.boards[0].top == 15_mm);
    CHECK(flat.turned_in[0].right < flat.boards[0].right);
    CHECK(flat.turned_in[0].right > flat.cloth->left);  // the paper lies over the cloth
    CHECK(flat.cloth->centre().x == flat.spine->centre().x);
}

TEST_CASE("a soft cover's rows of holes stand about its middle, inside the spine") {
    const auto m = test::drawn_measures(test::sewn_journal(4, {1, 2, 3, 4}, 6, 6, true), test::sheet_papers()[1], 100);
    const FlatCover flat = flat_cover(m);
    REQUIRE(flat.rows.size() == 6);
    CHECK(flat.rows[1] - flat.rows[0] == 4_mm);
    CHECK(flat.rows.front() + flat.rows.back() == flat.size.width);
    CHECK(flat.rows.front() > flat.panel->left);
    CHECK(flat.rows.back() < flat.panel->right);
}

TEST_CASE("the leaves of a concertina are as long as its pages") {
    const auto m = test::drawn_measures(test::drawn_journal("concertina"), test::sheet_papers()[0], 100);
    const Zigzag z = *flat_cover(m).zigzag;
    CHECK(z.leaves.size() == static_cast<std::size_t>(z.drawn) * 2 + 1);
    for (std::size_t i = 1; i < z.leaves.size(); ++i) {
        const double dx = (z.leaves[i].x - z.leaves[i - 1].x).in_mm(), dy = (z.leaves[i].y - z.leaves[i - 1].y).in_mm();
        CHECK(std::hypot(dx, dy) == Approx(m.conditions.page.width.in_mm()).margin(0.001));
    }
}

TEST_CASE("a corner is cut at 45°, as far from the board's corner as the template says") {
    for (const std::string picture : {"case-cover", "opened-cover", "concertina"})
        for (const Paper& paper : test::sheet_papers())
            for (const double board : {0.5, 1.0, 2.0, 3.0})
                for (const Rect& room : test::rooms(paper)) {
                    auto m = test::drawn_measures(test::drawn_journal(picture), paper, 100);
                    m.named["corner-cut"] = Length::mm(1.5 * board + 0.5);
                    m.conditions.board_stock.caliper = Length::mm(board);
                    CAPTURE(picture, paper.short_name, board);
                    const Drawing made = drawing(draw_corner, room, paper, m);
                    REQUIRE(made.there);
                    check_clear(made, room);
                    const double smaller = test::stated_scale(made);
                    const auto slanted = [](const auto& l) { return abs(l.first.x - l.second.x) > 3_mm && abs(l.first.y - l.second.y) > 3_mm; };
                    const auto heavy = test::lines_of(made.page, weight::heavy);
                    const auto cut = std::find_if(heavy.begin(), heavy.end(), slanted);
                    REQUIRE(cut != heavy.end());
                    CHECK(abs((cut->first.x - cut->second.x) + (cut->first.y - cut->second.y)) < 0.01_mm);
                    // The board's edges are the two lines of middle weight; where they meet is its corner.
                    const auto edges = test::lines_of(made.page, weight::line);
                    REQUIRE(edges.size() == 2);
                    CHECK(edges[0].second == edges[1].first);
                    const Point corner = edges[0].second;
                    const double off = ((cut->first.x - corner.x) + (cut->first.y - corner.y)).in_mm() / std::sqrt(2.0) * smaller;
                    CHECK(off == Approx(1.5 * board + 0.5).margin(0.02));
                    CHECK(made.says(named_figure(m, "corner-cut", m.ruler, Rounding::up)));
                    CHECK(made.says(named_figure(m, "turn-in", m.ruler)));
                }
}

TEST_CASE("a corner without its lengths is not drawn") {
    auto m = test::drawn_measures(test::drawn_journal("case-cover"), test::sheet_papers()[1], 100);
    const Rect room = SheetMargins::content(test::sheet_papers()[1].size);
    m.named.erase("corner-cut");
    const Drawing made = drawing(draw_corner, room, test::sheet_papers()[1], m);
    CHECK(!made.there);
    CHECK(made.page.items.empty());
}
