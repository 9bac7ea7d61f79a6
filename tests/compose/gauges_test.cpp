// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"
#include "compose/drawn_samples.h"
#include "compose/fractions.h"
#include "compose/gauge_cards.h"
#include "compose/gauges_sheet.h"
#include "compose/hole_jig_sheet.h"
#include "compose/jig_strip.h"
#include "compose/print_check_sheet.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

const std::vector<double> jig_sizes{103, 100, 90, 75, 50, 30};

const kit::Manifest& jig_manifest() {
    static const kit::Manifest made = [] {
        kit::Manifest m;
        m.title = "Sample & Company";
        m.version = "1.2.3";
        m.prints = {Print::borderless, Print::bordered};
        return m;
    }();
    return made;
}

SheetContext jig_context(const Paper& paper) { return {jig_manifest(), test::words_only(), paper, test::fonts(), Date{2026, 9, 1}}; }

std::vector<SizeColumn> jig_columns(const kit::JournalTemplate& journal, const Paper& paper) {
    std::vector<SizeColumn> columns;
    for (const double percent : jig_sizes)
        columns.push_back({std::to_string(static_cast<int>(percent)) + " %", percent, Print::borderless, test::drawn_measures(journal, paper, percent)});
    return columns;
}

std::optional<Document> jig_of(const kit::JournalTemplate& journal, const Paper& paper) {
    const auto columns = jig_columns(journal, paper);
    return hole_jig_sheet(jig_context(paper), columns[1], columns);
}

std::string said(const Document& document) {
    std::string all;
    for (const std::string& text : test::texts_of(document)) all += text + " ";
    return all;
}

void check_sheet(const Document& document) {
    for (const Page& page : document.pages) {
        for (const Collision& c : collisions(page, test::fonts(), SheetMargins::text(page.size))) {
            CAPTURE(c.words, c.other, static_cast<int>(c.with));
            FAIL_CHECK("a label collides");
        }
        for (const Item& item : page.items) {
            if (const auto* text = std::get_if<Text>(&item)) {
                CHECK(text->size >= 8.5_pt);
                CHECK(test::fonts().missing(text->cut, text->words).empty());
            }
        }
    }
}

/// All lines from the middle of the hole's ring: y of rings of the hole's radius, and the strip that each lies in.
struct Ring {
    Point centre;
};
std::vector<Ring> rings(const Page& page) {
    std::vector<Ring> all;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->fill == 1.0 && o->steps.size() == 6) {
            const Point right = std::get<Outline::Move>(o->steps[0]).to;
            all.push_back({{right.x - 1.5_mm, right.y}});
        }
    return all;
}

/// The strips' outlines: as wide as the jig, heavy.
std::vector<Rect> strips(const Page& page) {
    std::vector<Rect> all;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight::heavy && o->steps.size() == 5) {
            const Point low = std::get<Outline::Move>(o->steps[0]).to, high = std::get<Outline::Line>(o->steps[2]).to;
            if (high.x - low.x == jig_width) all.push_back({low.x, low.y, high.x, high.y});
        }
    return all;
}

std::vector<std::pair<Point, Point>> strokes_of(const Page& page, Length weight) {
    std::vector<std::pair<Point, Point>> all;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight && o->steps.size() == 2)
            all.emplace_back(std::get<Outline::Move>(o->steps[0]).to, std::get<Outline::Line>(o->steps[1]).to);
    return all;
}

}  // namespace

TEST_CASE("the hole jig is as long as the page, with every hole at its unrounded place") {
    for (const std::string picture : {"opened-cover", "wrapped-cover", "case-cover", "soft-cover"}) {
        const auto journal = test::drawn_journal(picture);
        for (const Paper& paper : test::sheet_papers()) {
            CAPTURE(picture, paper.short_name);
            const auto m = test::drawn_measures(journal, paper, 100);
            const Document document = *jig_of(journal, paper);
            check_sheet(document);
            std::vector<Length> found;
            Length length;
            for (const Page& page : document.pages) {
                // Parts from the left are parts from the head.
                for (const Rect& strip : strips(page)) {
                    for (const Ring& ring : rings(page))
                        if (strip.holds(Rect::at(ring.centre, {}))) {
                            CHECK(ring.centre.x == strip.centre().x);
                            found.push_back(length + strip.top - ring.centre.y);
                        }
                    length += strip.height();
                }
            }
            CHECK(length == m.conditions.page.height);
            REQUIRE(found.size() == m.page_stations.size());
            std::sort(found.begin(), found.end());
            for (std::size_t i = 0; i < found.size(); ++i) CHECK(abs(found[i] - m.page_stations[i].exact) < Length::units(4));
        }
    }
}

TEST_CASE("marks for the spine are the spine's holes from its middle") {
    const auto journal = test::drawn_journal("opened-cover");
    const Paper& a4 = test::sheet_papers()[1];
    const auto m = test::drawn_measures(journal, a4, 100);
    const Page page = jig_of(journal, a4)->pages.at(0);
    const Rect strip = strips(page).at(0);
    std::vector<Length> marks;
    for (const auto& [from, to] : strokes_of(page, weight::line))
        if (to.x == strip.right && from.y == to.y) marks.push_back(strip.centre().y - to.y);
    REQUIRE(marks.size() == m.spine_stations.size());
    for (std::size_t i = 0; i < marks.size(); ++i) CHECK(abs(marks[i] - (m.spine_stations[i].exact - m.piece("spine")->height.exact / 2)) < Length::units(4));
    // 3 mm squares (for the tests): the spine's holes are the pages' moved by the square, and from the middle the same.
    CHECK(marks[0] == -68_mm);
}

TEST_CASE("the jig says how it is used, and carries TOP, its middle and the gauge") {
    const auto journal = test::sewn_journal(4, {1, 2, 3, 4}, 6, 6, true);
    for (const Paper& paper : test::sheet_papers()) {
        const Document document = *jig_of(journal, paper);
        const std::string words = said(document);
        CAPTURE(paper.short_name, words);
        for (const char* part : {"TOP", "middle", "There are 6 rows of holes", "gauges sheet", "lay the middle on the middle of the soft cover", "by the square"})
            CHECK(words.find(part) != std::string::npos);
        CHECK(words.find("Print this sheet with the pages") != std::string::npos);
        CHECK(words.find("For " + paper.title + " paper, borderless ") != std::string::npos);
        CHECK(words.find("Pierce onto a mat") != std::string::npos);
        bool gauge = false;
        for (const Page& page : document.pages)
            for (const auto& [from, to] : strokes_of(page, weight::heavy)) gauge = gauge || (from.x == to.x && to.y - from.y == gauge_length(paper));
        CHECK(gauge);
    }
}

TEST_CASE("a strip longer than its paper comes in parts with a mark to join them by") {
    const Paper& small = test::sheet_papers()[3];
    const Document document = *jig_of(test::drawn_journal("opened-cover"), small);
    CHECK(strips(document.pages.back()).size() == 2);
    const auto texts = test::texts_of(document);
    CHECK(std::count(texts.begin(), texts.end(), "A") == 2);
    CHECK(said(document).find("It comes in 2 parts") != std::string::npos);
    CHECK(strips(jig_of(test::drawn_journal("opened-cover"), test::sheet_papers()[0])->pages[0]).size() == 1);
}

TEST_CASE("holes that do not move with the pages limit the sizes for which the jig holds") {
    auto journal = test::drawn_journal("opened-cover");
    const Paper& a4 = test::sheet_papers()[1];
    CHECK(said(*jig_of(journal, a4)).find("This jig holds") == std::string::npos);
    for (kit::NamedLength& length : journal.lengths)
        if (length.name == "station-inset") length.printed = false;
    const auto columns = jig_columns(journal, a4);
    CHECK(jig_holds(columns[1].measures, columns[1].measures));
    CHECK(!jig_holds(columns[1].measures, columns[2].measures));  // 37 mm, not 33.3 mm, from the head
    CHECK(said(*hole_jig_sheet(jig_context(a4), columns[1], columns)).find("This jig holds for pages printed at 100 %;") != std::string::npos);
    // 37 × 1.01 is 0.37 mm more than 37: near enough.
    CHECK(jig_holds(columns[1].measures, test::drawn_measures(journal, a4, 101)));
    CHECK(!jig_holds(columns[1].measures, test::drawn_measures(journal, a4, 98)));
}

TEST_CASE("without holes in the pages there is no jig") {
    CHECK(!jig_of(test::drawn_journal("concertina"), test::sheet_papers()[1]));
}

TEST_CASE("gauges are printed at full size, and no label collides on any paper") {
    for (const std::string& picture : test::all_pictures)
        for (const Paper& paper : test::sheet_papers())
            for (const int rows : {1, 6, 20}) {
                if (rows > 1 && picture != "soft-cover") continue;
                CAPTURE(picture, paper.short_name, rows);
                const auto journal = picture == "soft-cover" ? test::sewn_journal(4, {1, 2, 3, 4}, rows, rows, true) : test::drawn_journal(picture);
                const Document document = gauges_sheet(jig_context(paper), test::drawn_measures(journal, paper, 100));
                check_sheet(document);
                for (const Page& page : document.pages) {
                    Document alone;
                    alone.pages = {page};
                    CHECK(said(alone).find("Always print this sheet at 100 %") != std::string::npos);
                    bool gauge = false;
                    for (const auto& [from, to] : strokes_of(page, weight::heavy)) gauge = gauge || (from.x == to.x && to.y - from.y == gauge_length(paper));
                    CHECK(gauge);
                }
            }
}

TEST_CASE("the angle is a turn-in wide, and its line passes the board's corner at the distance of the cut") {
    const Paper& a4 = test::sheet_papers()[1];
    const auto m = test::drawn_measures(test::drawn_journal("case-cover"), a4, 100);
    const auto words = passages_of(test::words_only(), "gauges");
    const auto turn_in = gauge_lengths(m, {"turn-in"}, words), corner = gauge_lengths(m, {"corner-cut"}, words);
    REQUIRE(turn_in.size() == 1);
    REQUIRE(corner.size() == 1);
    Canvas canvas(a4.size, test::fonts());
    draw_angle_gauge(canvas, {20_mm, 200_mm}, 45_mm, turn_in[0], &corner[0], words);
    const Page page = std::move(canvas).finish();
    const Point inner{35_mm, 185_mm};  // 15 mm in from both outer edges
    const auto& outline = std::get<Outline>(page.items.at(0));
    CHECK(std::get<Outline::Move>(outline.steps[0]).to == inner);
    const auto [from, to] = strokes_of(page, weight::line).at(0);
    CHECK(from.x == 20_mm);
    CHECK(to.y == 200_mm);
    CHECK(to.x - from.x == to.y - from.y);
    // Distance of the corner from the line y − x = const.
    const double off = ((from.y - from.x) - (inner.y - inner.x)).in_mm() / std::sqrt(2.0);
    CHECK(off == Approx(m.named_length("corner-cut").in_mm()).margin(0.001));
}

TEST_CASE("each step is as deep as its length, and says it in both unit systems") {
    const Paper& letter = test::sheet_papers()[0];
    const auto m = test::drawn_measures(test::drawn_journal("opened-cover"), letter, 100);
    const auto words = passages_of(test::words_only(), "gauges");
    const auto lengths = gauge_lengths(m, {"hinge-gap", "head-square", "station-inset", "joint", "liner-inset"}, words);
    REQUIRE(lengths.size() == 3);  // the station inset shrinks with the pages, and there is no joint
    Canvas canvas(letter.size, test::fonts());
    const Point at{20_mm, 200_mm};
    draw_step_card(canvas, at, lengths);
    Document card;
    card.pages = {std::move(canvas).finish()};
    std::vector<Length> depths;
    for (const Item& item : card.pages[0].items)
        if (const auto* outline = std::get_if<Outline>(&item))
            for (std::size_t i = 2; i < outline->steps.size(); i += 4)
                if (const auto* line = std::get_if<Outline::Line>(&outline->steps[i + 1]); line && depths.size() < 3) depths.push_back(at.y - line->to.y);
    CHECK(depths == std::vector<Length>{Length::inches(1.0 / 16), 0.125_in, 0.125_in});
    const auto texts = test::texts_of(card);
    for (const char* figure : {"1/16 in", "1 mm", "1/8 in", "3 mm"}) CHECK(std::count(texts.begin(), texts.end(), real_fractions(figure)) >= 1);
}

TEST_CASE("the strip of rows has a line for each row, as far apart as they are") {
    for (const Paper& paper : test::sheet_papers()) {
        const auto m = test::drawn_measures(test::sewn_journal(4, {1, 2, 3, 4}, 7, 7, true), paper, 100);
        const Document document = gauges_sheet(jig_context(paper), m);
        std::vector<Length> lines;
        for (const Page& page : document.pages)
            for (const auto& [from, to] : strokes_of(page, weight::line))
                if (from.x == to.x && to.y - from.y == 7_mm) lines.push_back(from.x);
        CAPTURE(paper.short_name);
        REQUIRE(lines.size() == 7);
        for (std::size_t i = 1; i < lines.size(); ++i) CHECK(lines[i] - lines[i - 1] == m.sewing->row_gap.rounded);
    }
}
