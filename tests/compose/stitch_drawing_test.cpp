// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/stitch_drawing.h"

#include "compose/drawing_alone.h"
#include "compose/fractions.h"
#include "compose/station_strip.h"
#include "compose/stitch_path.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;
using test::check_clear;
using test::drawing;
using test::Drawing;

namespace {

using kit::Around;

/// Written as in a template: 0 to −2 for spine, head and tail.
kit::SewingTemplate sewn_from(const std::vector<int>& written) {
    kit::SewingTemplate sewing;
    for (const int part : written) {
        if (part > 0) sewing.path.push_back(part), sewing.around.push_back(Around::nothing);
        else sewing.around.back() = part == 0 ? Around::spine : part == -1 ? Around::head : Around::tail;
    }
    return sewing;
}

/// Each of four holes is gone through three times, once round the spine, at the ends once round head and tail.
const std::vector<int> side_path{2, 0, 2, 1, 0, 1, -1, 1, 2, 3, 0, 3, 4, 0, 4, -2, 4, 3};

kit::JournalTemplate side_journal(int stations, const std::vector<int>& written) {
    kit::JournalTemplate journal = test::sewn_journal(stations, {}, 1, 1, false);
    const kit::SewingTemplate sewing = sewn_from(written);
    journal.sewing->path = sewing.path;
    journal.sewing->around = sewing.around;
    journal.sewing->begins_inside = false;
    if (sewing.from_the_side()) journal.sewing->inset = journal.sewing->row_gap;
    return journal;
}

}  // namespace

TEST_CASE("moves of the needle lie on the side where the thread is, and never on each other") {
    // The 3- and the 5-station pamphlet stitch.
    for (const auto& [stations, path] : {std::pair(3, std::vector<int>{2, 1, 3, 2}), std::pair(5, std::vector<int>{3, 2, 1, 2, 4, 5, 4, 3})}) {
        kit::SewingTemplate sewing;
        sewing.path = path;
        std::vector<double> places;
        for (int i = 1; i <= stations; ++i) places.push_back(i / (stations + 1.0));
        const auto laid = lay_path(sewing, places, 0_mm, 150_mm, 6_mm);
        REQUIRE(laid);
        REQUIRE(laid->moves.size() == path.size() - 1);
        for (const Move& move : laid->moves) {
            CHECK(move.outside == (move.number % 2 == 1));  // begun inside, the first move comes out
            for (const Move& other : laid->moves)
                if (const Stretch &a = move.stretches.at(0), &b = other.stretches.at(0); move.number < other.number && a.outside == b.outside && a.lane == b.lane)
                    CHECK((a.right() <= b.left() || b.right() <= a.left()));
        }
        CHECK(!laid->begins_outside);
        CHECK(!laid->ends_outside);
        std::vector<Length> passes;
        for (const Pass& pass : laid->passes) passes.push_back(pass.x);
        std::sort(passes.begin(), passes.end());
        for (std::size_t i = 1; i < passes.size(); ++i) CHECK(passes[i] - passes[i - 1] >= 1.5_mm);
    }
    kit::SewingTemplate wrong;
    wrong.path = {1, 4};
    CHECK(!lay_path(wrong, {0.2, 0.5, 0.8}, 0_mm, 150_mm, 6_mm));
}

TEST_CASE("turns bring the thread to the other side, and round head and tail it lies beyond the ends") {
    kit::SewingTemplate sewing = sewn_from(side_path);
    sewing.begins_inside = false;  // at the front
    const auto laid = lay_path(sewing, {0.1, 0.4, 0.6, 0.9}, 20_mm, 170_mm, 6_mm);
    REQUIRE(laid);
    CHECK(laid->from_the_side);
    CHECK(laid->moves.size() == 11);
    std::string sides;
    for (const Move& move : laid->moves)
        sides += std::string(move.outside ? "f" : "b") + (move.around == Around::nothing ? " "
                                                          : move.around == Around::spine ? "s "
                                                          : move.around == Around::head  ? "h "
                                                                                         : "t ");
    // By hand: each hole changes the side and each turn too, so that the thread comes out of a turn where it went in.
    CHECK(sides == "bs b fs fh f b fs f bs bt b ");
    CHECK(laid->begins_outside);
    CHECK(laid->ends_outside);
    const Move &head = laid->moves[3], &tail = laid->moves[9];
    REQUIRE(head.stretches.size() == 2);
    CHECK(head.stretches[0].outside);
    CHECK(!head.stretches[1].outside);
    for (const Stretch& stretch : head.stretches) CHECK(stretch.to == 20_mm - turn_apart);
    for (const Stretch& stretch : tail.stretches) CHECK(stretch.to == 170_mm + turn_apart);
    CHECK(laid->moves[0].stretches.empty());
    for (const Move& a : laid->moves)
        for (const Stretch& one : a.stretches)
            for (const Move& b : laid->moves)
                for (const Stretch& other : b.stretches)
                    if (&one != &other && one.outside == other.outside && one.lane == other.lane)
                        CHECK((one.right() <= other.left() || other.right() <= one.left()));
    sewing.begins_inside = true;
    CHECK(!lay_path(sewing, {0.1, 0.4, 0.6, 0.9}, 20_mm, 170_mm, 6_mm)->ends_outside);
}

TEST_CASE("a block that is sewn from the side is drawn open round its spine, and nothing collides") {
    for (const Paper& paper : test::sheet_papers()) {
        const Rect all = SheetMargins::content(paper.size);
        for (const auto& [stations, path] :
             {std::pair(4, side_path), std::pair(3, std::vector<int>{2, 0, 2, 1, 0, 1, -1, 1, 2, 3, 0, 3, -2, 3}),
              std::pair(5, std::vector<int>{3, 0, 3, 2, 0, 2, 1, 0, 1, -1, 1, 2, 3, 4, 0, 4, 5, 0, 5, -2, 5, 4}),
              std::pair(2, std::vector<int>{1, 0, 1, 2, 0, 2}), std::pair(3, std::vector<int>{1, -1, 1, 2, 3, -2, 3, 2})})
            for (const double percent : {100.0, 50.0}) {
                CAPTURE(paper.short_name, stations, percent);
                const auto m = test::drawn_measures(side_journal(stations, path), paper, percent);
                const Rect room{all.left, all.top - 90_mm, all.right, all.top};
                const Drawing made = drawing(draw_stitch, room, paper, m);
                REQUIRE(made.there);
                check_clear(made, room);
                const kit::SewingTemplate& sewing = *m.sewing->of;
                for (std::size_t move = 1; move < sewing.path.size(); ++move) CHECK(made.says(std::to_string(move)));
                CHECK(!made.says(std::to_string(sewing.path.size())));
                for (const char* name : {"front", "back", "spine"}) CHECK(made.says(name) == sewing.from_the_side());
                CHECK(made.says("inside") != sewing.from_the_side());
            }
    }
}

TEST_CASE("stitches of 3 to 9 stations and of up to 20 rows are drawn and nothing collides") {
    for (const Paper& paper : test::sheet_papers()) {
        const Rect all = SheetMargins::content(paper.size), room{all.left, all.bottom, all.right, all.top - 10_mm};
        for (int stations = 3; stations <= 9; ++stations)
            for (const int rows : {1, 2, 7, 20})
                for (const bool goes_on : {false, true}) {
                    std::vector<int> path;
                    for (int i = 1; i <= stations - (goes_on ? stations % 2 : 0); ++i) path.push_back(i);
                    if (!goes_on) for (int i = stations - 1; i >= 1; --i) path.push_back(i);
                    const auto m = test::drawn_measures(test::sewn_journal(stations, path, rows, rows, goes_on), paper, 100);
                    CAPTURE(paper.short_name, stations, rows, goes_on);
                    const Drawing made = drawing(draw_stitch, room, paper, m);
                    REQUIRE(made.there);
                    check_clear(made, room);
                    for (std::size_t move = 1; move < path.size(); ++move) CHECK(made.says(std::to_string(move)));
                    if (rows > 1) CHECK(made.says("The spine from outside, " + std::to_string(rows) + " rows"));
                }
    }
}

TEST_CASE("the thread is solid outside and dashed inside, and climbs once between two signatures") {
    const Paper& paper = test::sheet_papers()[1];
    const auto m = test::drawn_measures(test::sewn_journal(4, {1, 2, 3, 4}, 5, 5, true), paper, 100);
    const Drawing made = drawing(draw_stitch, SheetMargins::content(paper.size), paper, m);
    const auto dashed = test::lines_of(made.page, weight::heavy, true), solid = test::lines_of(made.page, weight::heavy);
    const auto across = [](const auto& lines) {
        return std::count_if(lines.begin(), lines.end(), [](auto& l) { return l.first.y == l.second.y && abs(l.first.x - l.second.x) > 4_mm; });
    };
    // Moves 1 and 3 run inside, each line parted by its number; and the legend's sample.
    CHECK(across(dashed) == 2 * 2 + 1);
    // Move 2 outside, again on each of five rows, and the legend's sample.
    CHECK(across(solid) == 2 + 5 + 1);
    CHECK(std::count_if(solid.begin(), solid.end(), [&](auto& l) { return l.first.x == l.second.x && l.first.y - l.second.y == 7_mm; }) == 4);
    CHECK(made.says("start"));
    CHECK(made.says("on to the next"));
    CHECK(made.says("knot"));
}

TEST_CASE("a journal that is not sewn has no stitch") {
    const Paper& paper = test::sheet_papers()[1];
    const auto m = test::drawn_measures(test::drawn_journal("concertina"), paper, 100);
    CHECK(!drawing(draw_stitch, SheetMargins::content(paper.size), paper, m).there);
    CHECK(!drawing(draw_stations, SheetMargins::content(paper.size), paper, m).there);
}

TEST_CASE("holes of pages and spine are set out side by side, however many there are") {
    for (const Paper& paper : test::sheet_papers())
        for (const int stations : {1, 3, 5, 9})
            for (const double percent : test::print_sizes) {
                std::vector<int> path;
                for (int i = 1; i <= stations; ++i) path.push_back(i);
                const auto m = test::drawn_measures(test::sewn_journal(stations, path, 3, 3, true), paper, percent);
                CAPTURE(paper.short_name, stations, percent);
                for (const Rect& room : test::rooms(paper)) {
                    const Drawing made = drawing(draw_stations, room, paper, m);
                    REQUIRE(made.there);
                    check_clear(made, room);
                    for (const auto& list : {m.page_stations, m.spine_stations})
                        for (const journal::Shown& s : list) CHECK(made.says(real_fractions(show(s.rounded, m.ruler))));
                }
            }
}
