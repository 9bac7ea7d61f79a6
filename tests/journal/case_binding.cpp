// SPDX-License-Identifier: GPL-3.0-or-later
// The journal pipeline/journals/case-binding.yaml as it stands in the pipeline, held against published rules.
#include "journal/real_journal.h"

#include <cmath>
#include <numbers>

using namespace qw;
using namespace qw::example;
using Catch::Matchers::Contains;
using Rules = std::vector<std::string>;

namespace {

const kit::JournalTemplate& cased_book() { return real_journal("case-binding"); }

journal::Conditions with_boards(journal::Conditions c, Length caliper) {
    c.board_stock.caliper = c.spine_stock.caliper = caliper;
    return c;
}

}  // namespace

TEST_CASE("signatures are counted up: all sheets find a place") {
    // 12 folios at 3 a signature make 4 signatures (Indiana University Libraries, Making a Casebound Book).
    const auto threes = with_number(cased_book(), "wanted-sheets", 3);
    CHECK(journal::compute(threes, conditions(a4())).sewing->signatures == 4);
    CHECK(figure_text(journal::compute(threes, conditions(a4())), "sheets-in-signature", UnitSystem::metric) == "3");
    // 4 folded sheets are the usual section (University of Brighton, Making sections).
    journal::Conditions c = conditions(a4());
    for (c.sheets = 1; c.sheets <= 40; ++c.sheets) {
        const journal::Measures m = journal::compute(cased_book(), c);
        CHECK(m.sewing->signatures * 4 >= c.sheets);
        CHECK((m.sewing->signatures - 1) * 4 < c.sheets);
        CHECK(m.figure("sheets-in-signature")->number <= 4);
    }
}

// B. Sawyer, Build cover boards, with board of 1/8 in: 1/4 in higher than the page; 1/8 in is added at the fore-edge and two
// board thicknesses are taken off at the spine, which leaves 1/8 in less than the page; spine board = block + two boards.
TEST_CASE("boards of 1/8 in are W - 1/8 in by H + 1/4 in") {
    const journal::Measures m = journal::compute(cased_book(), with_boards(conditions(letter()), Length::inches(0.125)));
    const Size page = m.conditions.page;
    CHECK(m.piece("board")->width.exact == page.width - Length::inches(0.125));
    CHECK(m.piece("board")->height.exact == page.height + Length::inches(0.25));
    CHECK(cut_as(m, "board", UnitSystem::us) == "2 of 5 3/8 x 8 3/4 in");
    CHECK(abs(m.piece("spine")->width.exact - m.named_length("block-at-spine") - Length::inches(0.25)) <= Length::units(2));
    CHECK(m.piece("spine")->height.exact == m.piece("board")->height.exact);
    CHECK_FALSE(has_errors(m.findings));
}

// Nik the Booksmith, Rebinding a soft cover book: board H + 6 mm, W - 3 mm, gap 7.5 mm. A jig of the University of Virginia sets a joint of 1/4 in
// and a square of 1/8 in (AIC wiki, Case binding repair for circulating collections); Collins, Handicraft for Boys: 1/4 in.
TEST_CASE("boards and gaps of common thicknesses stand where published rules put them") {
    for (const double board : {1.0, 1.5, 2.0}) {
        const journal::Measures m = journal::compute(cased_book(), with_boards(conditions(a4()), Length::mm(board)));
        CHECK(m.piece("board")->width.exact == m.conditions.page.width - Length::mm(3));
        CHECK(m.piece("board")->height.exact == m.conditions.page.height + Length::mm(6));
        CHECK(abs(m.figure("case-gap")->length.exact - Length::mm(7.5)) <= Length::mm(0.5));
        CHECK(m.figure("case-gap")->length.us == Length::inches(5.0 / 16));  // 1/4 in and the spine piece's thickness
        // The gap reaches over the spine piece's thickness and the setback; the page's square is then as wide as planned.
        CHECK(m.named_length("joint") - Length::mm(board) + m.piece("board")->width.rounded - m.conditions.page.width == Length::mm(3));
    }
}

TEST_CASE("a case on A4 with boards of 1 mm, by hand") {
    const journal::Measures m = journal::compute(cased_book(), with_pages(conditions(a4()), 12, Length::mm(0.125)));
    // 148.5 + 3 - 6 = 145.5; 210 + 6 = 216
    CHECK(cut_as(m, "board", UnitSystem::metric) == "2 of 145.5 x 216 mm");
    // 24 leaves 3 mm, 3 threads of 0.5 mm, 4 endpaper leaves 0.5 mm: 5 mm; two boards: 7 mm
    CHECK(figure_text(m, "sewn-block", UnitSystem::metric) == "5 mm");
    CHECK(cut_as(m, "spine", UnitSystem::metric) == "1 of 7 x 216 mm");
    // 7 + 2 * 7 + 2 * 25 = 71; 216 + 2 * 15 = 246
    CHECK(cut_as(m, "spine-cloth", UnitSystem::metric) == "1 of 71 x 246 mm");
    // 145.5 - 25 + 3 + 15 = 138.5
    CHECK(cut_as(m, "cover-paper", UnitSystem::metric) == "2 of 138.5 x 246 mm");
    CHECK(cut_as(m, "endpaper", UnitSystem::metric) == "2 of 297 x 210 mm");
    // 5 + 2 * 25 = 55; 210 - 2 * 16 = 178: 5/8 in short of the ends (Diehl, Bookbinding: pamphlets and thin books)
    CHECK(cut_as(m, "spine-lining", UnitSystem::metric) == "1 of 55 x 178 mm");
    CHECK(figure_text(m, "corner-cut", UnitSystem::metric) == "2 mm");
    // From corner to corner of 148.5 x 210 mm 257.2 mm, and 80 mm
    CHECK(m.length("ribbon-marker")->length.rounded == Length::mm(340));
    CHECK(m.findings.empty());
}

TEST_CASE("on letter each length is the inch ruler's own") {
    const journal::Measures m = journal::compute(cased_book(), with_pages(conditions(letter()), 12, Length::mm(0.125)));
    // Turn-ins of 5/8 in (library binding: Roberts and Etherington, "cover turned-in").
    CHECK(m.piece("spine-cloth")->height.exact == m.piece("board")->height.exact + Length::inches(1.25));
    CHECK(m.piece("spine-cloth")->height.rounded == Length::inches(10));
    // Kettle stations 1/2 in from each end (Bean and Brodhead, Bookbinding for Beginners).
    REQUIRE(m.page_stations.size() == 6);
    CHECK(m.page_stations.front().us == Length::inches(0.5));
    CHECK(m.page_stations.back().us == Length::inches(8));
    // 5 1/2 + 1/8 - 1/4; three threads of 0.02 in
    CHECK(m.piece("board")->width.us == Length::inches(5.375));
    CHECK(m.named_length("swell") == Length::inches(0.06));
}

TEST_CASE("the thread goes once along each signature, and is cut in lengths that can be handled") {
    journal::Conditions c = conditions(a4());
    const journal::Measures m = journal::compute(cased_book(), c);
    // Along the fold from the first to the last station, whatever stands between them: H - 2e.
    CHECK(abs(m.sewing->path - Length::mm(210 - 2 * 13)) < Length::mm(0.001));
    // 3 * (184 + 12) + 2 * 150 = 888
    CHECK(m.length("sewing-thread")->count == 1);
    CHECK(m.length("sewing-thread")->length.rounded == Length::mm(890));
    CHECK(m.sewing->of->goes_on);
    CHECK_FALSE(m.sewing->of->begins_inside);
    // 40 sheets: 10 * 196 = 1960 mm of way, of which a length of 2 m sews in 1.7 m: two lengths of 980 + 300 mm.
    c.sheets = 40;
    const journal::Measures thick = journal::compute(cased_book(), c);
    CHECK(thick.length("sewing-thread")->count == 2);
    CHECK(thick.length("sewing-thread")->length.rounded == Length::mm(1280));
    for (c.sheets = 1; c.sheets <= 80; ++c.sheets) CHECK(journal::compute(cased_book(), c).length("sewing-thread")->length.rounded <= Length::mm(2000));
}

TEST_CASE("a signature of usual paper is as thick as published, and creeps inside the square") {
    // 1 to 2 mm when squeezed (University of Brighton, Making sections).
    const journal::Measures m = journal::compute(cased_book(), with_pages(conditions(a4()), 12, Length::mm(0.125)));
    CHECK(m.named_length("signature-thickness") >= Length::mm(1));
    CHECK(m.named_length("signature-thickness") <= Length::mm(2));
    // 4 sheets of 0.10 mm: 0.30 mm with a sharp fold, 0.471 mm round half a turn (geometry).
    const journal::Measures thin = journal::compute(cased_book(), with_pages(conditions(a4()), 16, Length::mm(0.10)));
    CHECK(thin.creep_least == Length::mm(0.30));
    CHECK(thin.creep_most.in_mm() == Approx(0.3 * std::numbers::pi / 2).margin(0.0005));
    CHECK(thin.creep_most < Length::mm(3));
}

TEST_CASE("what may be left out of the case is left out") {
    const auto plain = with_choice(with_choice(cased_book(), "headband", "none"), "ribbon-marker", "none");
    const journal::Measures m = journal::compute(plain, conditions(a4()));
    CHECK_FALSE(m.length("headband"));
    CHECK_FALSE(m.length("ribbon-marker"));
    CHECK(m.length("sewing-thread"));
    CHECK(with_choice(cased_book(), "spine-lining", "paper-lining").pieces.back().material == "paper-strip");
}

TEST_CASE("each check of the case binding can fail, and says what it measured") {
    journal::Conditions c = with_pages(conditions(a4()), 12, Length::mm(0.125));
    const auto now = [&] { return journal::compute(cased_book(), c); };
    SECTION("full sheets that are smaller than the pages") {
        c.cover_sheet = a4().size * 0.8;
        CHECK(failed(now()) == Rules{"cover-paper-fits-sheet"});
        // 246 mm of 237.6 mm is 8.4 mm short; in the width 138.5 mm of 168 mm fit.
        CHECK(now().findings.at(0).message == "The cover paper needs 246 mm and the printed full sheet has 237.6 mm.");
        CHECK_THAT(now().findings.at(0).mend, Contains("100 %"));
    }
    SECTION("thick paper") {
        c.page_stock.caliper = Length::mm(0.3);
        CHECK(failed(now()) == Rules{"signature-thickness"});
        CHECK(now().findings.at(0).measured == "2.4 mm");
    }
    SECTION("very thick paper") {
        c.page_stock.caliper = Length::mm(0.7);  // 3 * 0.7 * pi / 2 = 3.3 mm beyond 3 mm
        CHECK(failed(now()) == Rules{"signature-thickness", "creep-inside-square"});
    }
    SECTION("one signature") {
        c.sheets = 4;
        CHECK(failed(now()) == Rules{"enough-signatures", "spine-wide-enough"});
        c.sheets = 5;
        CHECK(failed(now()) == Rules{"spine-wide-enough"});  // 1.25 + 1 + 0.5 + 2 = 4.75 mm
        CHECK(now().findings.at(0).measured == "4.75 mm");
        CHECK(now().findings.at(0).level == Level::note);
    }
    SECTION("thick board") {
        c = with_boards(c, Length::mm(3.2));
        CHECK(failed(now()) == Rules{"joint-opens"});
        c = with_boards(c, Length::mm(12));
        CHECK(failed(now()) == Rules{"joint-opens", "turn-in-covered"});
    }
    SECTION("small print") {
        c = conditions(a4(), 0.3);
        c.cover_sheet = a4().size;
        CHECK(failed(now()) == Rules{"cloth-holds", "station-near-end"});
    }
    SECTION("pockets") {
        c.glued_in = Length::mm(4);
        CHECK(failed(now()) == Rules{"pockets-beside-swell"});
        // Three threads leave 1.5 mm.
        CHECK_THAT(now().findings.at(0).message, Contains("should be 2.5 mm wider"));
        // Thread that is 2 mm thick leaves 6 mm.
        kit::JournalTemplate thick = cased_book();
        thick.cut_lengths.front().thickness = {Length::mm(2), Length::mm(2)};
        CHECK(failed(journal::compute(thick, c)) == Rules{});
    }
    SECTION("printed board under thin paper") {
        c.board_stock.printed = true;
        CHECK(failed(now()) == Rules{"board-shows-through"});
        c.cover_stock.grammage = 120;
        CHECK(now().findings.empty());
    }
    SECTION("heavy paper") {
        c.page_stock.grammage = 170;
        CHECK(failed(now()) == Rules{"fold-scored"});
        CHECK(now().findings.at(0).level == Level::note);
    }
    SECTION("a lining wider than the boards") {
        CHECK(failed(journal::compute(with_length(cased_book(), "lining-flap", Length::mm(160)), c)) == Rules{"lining-on-board"});
    }
}
