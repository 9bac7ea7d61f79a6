// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"
#include "compose/corner_drawing.h"
#include "compose/cover_drawing.h"
#include "compose/drawn_samples.h"
#include "compose/flat_cover.h"
#include "compose/fractions.h"
#include "compose/named_figure.h"
#include "compose/sample_kit.h"
#include "compose/station_strip.h"
#include "compose/stitch_drawing.h"
#include "compose/stitch_path.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

const texts::Passages& drawing_words() {
    static const auto words = passages_of(test::words_only(), "drawings");
    return words;
}

using Drawn = bool (*)(Canvas&, const Rect&, const journal::Measures&, const texts::Passages&);

struct Drawing {
    bool there = false;
    Page page;
    std::vector<const Text*> texts() const {
        std::vector<const Text*> all;
        for (const Item& item : page.items)
            if (const auto* text = std::get_if<Text>(&item)) all.push_back(text);
        return all;
    }
    bool says(const std::string& words) const {
        const auto all = texts();
        return std::any_of(all.begin(), all.end(), [&](const Text* t) { return t->words == words; });
    }
};

Drawing drawing(Drawn draw, const Rect& room, const Paper& paper, const journal::Measures& measures) {
    Canvas canvas(paper.size, test::fonts());
    Drawing made;
    made.there = draw(canvas, room, measures, drawing_words());
    made.page = std::move(canvas).finish();
    return made;
}

std::vector<Point> points_of_outline(const Outline& outline) {
    std::vector<Point> points;
    for (const auto& step : outline.steps) {
        if (const auto* move = std::get_if<Outline::Move>(&step)) points.push_back(move->to);
        else if (const auto* line = std::get_if<Outline::Line>(&step)) points.push_back(line->to);
        else if (const auto* curve = std::get_if<Outline::Curve>(&step)) points.push_back(curve->to);
    }
    return points;
}

Rect box_of_outline(const Outline& outline) {
    const auto points = points_of_outline(outline);
    Rect box{points[0].x, points[0].y, points[0].x, points[0].y};
    for (const Point& p : points) box = {min(box.left, p.x), min(box.bottom, p.y), max(box.right, p.x), max(box.top, p.y)};
    return box;
}

/// Nothing leaves the room, no text is small, over another, under a line or under something dark; three line weights.
void check_clear(const Drawing& made, const Rect& room) {
    for (const Collision& c : collisions(made.page, test::fonts(), room)) {
        CAPTURE(c.words, c.other, static_cast<int>(c.with));
        FAIL_CHECK("a label collides");
    }
    std::vector<Rect> dark;
    for (const Item& item : made.page.items) {
        const auto* outline = std::get_if<Outline>(&item);
        if (!outline) continue;
        CHECK(room.holds(box_of_outline(*outline), 0.02_mm));
        if (outline->fill && *outline->fill < 0.5) dark.push_back(box_of_outline(*outline));
        if (outline->stroke) CHECK((*outline->stroke == weight::hair || *outline->stroke == weight::line || *outline->stroke == weight::heavy));
    }
    for (const Text* text : made.texts()) {
        CAPTURE(text->words);
        CHECK(text->size >= 8.5_pt);
        CHECK(text->grey == 0);
        CHECK(test::fonts().missing(text->cut, text->words).empty());
        for (const Rect& shape : dark) CHECK(shape.shared_with(box_of(*text, test::fonts()).inset(0.05_mm)).empty());
    }
}

/// The part of a sheet that is left below a table, from all of it to less than half.
std::vector<Rect> rooms(const Paper& paper) {
    const Rect all = SheetMargins::content(paper.size);
    std::vector<Rect> rooms;
    for (const double part : {0.9, 0.62}) rooms.push_back({all.left, all.top - all.height() * part, all.right, all.top});
    return rooms;
}

const std::vector<double> sizes{103, 100, 91, 77, 64, 50, 41, 30};

void for_every_cover(const std::function<void(const kit::JournalTemplate&, const Paper&, const journal::Measures&, double)>& look) {
    for (const std::string& picture : test::all_pictures) {
        const kit::JournalTemplate journal = test::drawn_journal(picture);
        for (const Paper& paper : test::sheet_papers())
            for (const double percent : sizes) {
                CAPTURE(picture, paper.short_name, percent);
                look(journal, paper, test::drawn_measures(journal, paper, percent), percent);
            }
    }
}

/// Straight two-point strokes of a weight.
std::vector<std::pair<Point, Point>> lines_of(const Page& page, Length weight, bool dashed = false) {
    std::vector<std::pair<Point, Point>> all;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight && o->steps.size() == 2 && o->dash.empty() == !dashed)
            all.emplace_back(std::get<Outline::Move>(o->steps[0]).to, std::get<Outline::Line>(o->steps[1]).to);
    return all;
}

/// "Drawn at 1 : 2.5" → 2.5.
double stated_scale(const Drawing& made) {
    for (const Text* text : made.texts()) {
        double a = 0, b = 0;
        if (std::sscanf(text->words.c_str(), "Drawn at %lf : %lf", &a, &b) == 2) return b / a;
    }
    return 0;
}

}  // namespace

TEST_CASE("every cover is drawn at every size on every paper, and no label collides", "[many]") {
    for_every_cover([](const kit::JournalTemplate&, const Paper& paper, const journal::Measures& measures, double) {
        for (const Rect& room : rooms(paper)) {
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
        if (flat.gap > 0_mm && flat.fold && flat.paper) CHECK(made.says(drawing_words().line("left-beside-fold")));
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
        const double smaller = stated_scale(made);
        REQUIRE(smaller >= 1);
        const Rect wanted = flat.boards.empty() ? Rect::of(flat.size) : flat.boards.front();
        CHECK(std::any_of(made.page.items.begin(), made.page.items.end(), [&](const Item& item) {
            const auto* o = std::get_if<Outline>(&item);
            return o && o->stroke && o->steps.size() == 5 && abs(box_of_outline(*o).width() - wanted.width() / smaller) < 0.01_mm &&
                   abs(box_of_outline(*o).height() - wanted.height() / smaller) < 0.01_mm;
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
                for (const Rect& room : rooms(paper)) {
                    auto m = test::drawn_measures(test::drawn_journal(picture), paper, 100);
                    m.named["corner-cut"] = Length::mm(1.5 * board + 0.5);
                    m.conditions.board_stock.caliper = Length::mm(board);
                    CAPTURE(picture, paper.short_name, board);
                    const Drawing made = drawing(draw_corner, room, paper, m);
                    REQUIRE(made.there);
                    check_clear(made, room);
                    const double smaller = stated_scale(made);
                    const auto slanted = [](const auto& l) { return abs(l.first.x - l.second.x) > 3_mm && abs(l.first.y - l.second.y) > 3_mm; };
                    const auto heavy = lines_of(made.page, weight::heavy);
                    const auto cut = std::find_if(heavy.begin(), heavy.end(), slanted);
                    REQUIRE(cut != heavy.end());
                    CHECK(abs((cut->first.x - cut->second.x) + (cut->first.y - cut->second.y)) < 0.01_mm);
                    // The board's edges are the two lines of middle weight; where they meet is its corner.
                    const auto edges = lines_of(made.page, weight::line);
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

TEST_CASE("turns bring the thread to the other side, and round head and tail it lies beyond the ends") {
    kit::SewingTemplate sewing = sewn_from(side_path);
    sewing.begins_inside = false;  // at the front
    const auto laid = lay_path(sewing, {0.1, 0.4, 0.6, 0.9}, 20_mm, 170_mm, 6_mm);
    REQUIRE(laid);
    CHECK(laid->from_the_side);
    CHECK(laid->moves.size() == 11);
    std::string sides;
    for (const Move& move : laid->moves) sides += std::string(move.outside ? "f" : "b") + (move.around == Around::nothing ? " " : move.around == Around::spine ? "s " : move.around == Around::head ? "h " : "t ");
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
                    if (&one != &other && one.outside == other.outside && one.lane == other.lane) CHECK((one.right() <= other.left() || other.right() <= one.left()));
    sewing.begins_inside = true;
    CHECK(!lay_path(sewing, {0.1, 0.4, 0.6, 0.9}, 20_mm, 170_mm, 6_mm)->ends_outside);
}

TEST_CASE("a block that is sewn from the side is drawn open round its spine, and nothing collides") {
    for (const Paper& paper : test::sheet_papers()) {
        const Rect all = SheetMargins::content(paper.size);
        for (const auto& [stations, path] : {std::pair(4, side_path), std::pair(3, std::vector<int>{2, 0, 2, 1, 0, 1, -1, 1, 2, 3, 0, 3, -2, 3}),
                                             std::pair(5, std::vector<int>{3, 0, 3, 2, 0, 2, 1, 0, 1, -1, 1, 2, 3, 4, 0, 4, 5, 0, 5, -2, 5, 4}), std::pair(2, std::vector<int>{1, 0, 1, 2, 0, 2}),
                                             std::pair(3, std::vector<int>{1, -1, 1, 2, 3, -2, 3, 2})})
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
    const auto dashed = lines_of(made.page, weight::heavy, true), solid = lines_of(made.page, weight::heavy);
    const auto across = [](const auto& lines) { return std::count_if(lines.begin(), lines.end(), [](auto& l) { return l.first.y == l.second.y && abs(l.first.x - l.second.x) > 4_mm; }); };
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
            for (const double percent : sizes) {
                std::vector<int> path;
                for (int i = 1; i <= stations; ++i) path.push_back(i);
                const auto m = test::drawn_measures(test::sewn_journal(stations, path, 3, 3, true), paper, percent);
                CAPTURE(paper.short_name, stations, percent);
                for (const Rect& room : rooms(paper)) {
                    const Drawing made = drawing(draw_stations, room, paper, m);
                    REQUIRE(made.there);
                    check_clear(made, room);
                    for (const auto& list : {m.page_stations, m.spine_stations})
                        for (const journal::Shown& s : list) CHECK(made.says(real_fractions(show(s.rounded, m.ruler))));
                }
            }
}
