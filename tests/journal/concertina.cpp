// SPDX-License-Identifier: GPL-3.0-or-later
// The journal pipeline/journals/concertina.yaml as it stands in the pipeline.
#include "journal/real_journal.h"

using namespace qw;
using namespace qw::example;
using Catch::Matchers::Contains;
using Rules = std::vector<std::string>;

namespace {

const kit::JournalTemplate& zigzag_book() { return real_journal("concertina"); }

}  // namespace

TEST_CASE("a concertina on A4, by hand") {
    const journal::Measures m = journal::compute(zigzag_book(), with_pages(conditions(a4()), 12, Length::mm(0.125)));
    // 148.5 mm and half of the 1 mm under a guard, and squares of 3 mm on all four sides (IU Libraries, book repair manual)
    CHECK(cut_as(m, "board", UnitSystem::metric) == "2 of 155 x 216 mm");
    CHECK(cut_as(m, "cover-paper", UnitSystem::metric) == "2 of 185 x 246 mm");
    CHECK(cut_as(m, "liner", UnitSystem::metric) == "2 of 149 x 210 mm");
    // Eleven joins and both ends; 10 + 1 + 10 mm wide, 2 mm short at head and tail
    CHECK(cut_as(m, "guard", UnitSystem::metric) == "13 of 21 x 206 mm");
    // 24 leaves, two thicknesses for each join, one at each end: 48 of 0.125 mm
    CHECK(m.bulk == Length::mm(6));
    // With two boards of 1 mm, covered and lined with paper of 0.10 mm
    CHECK(m.named_length("closed") == Length::mm(8.4));
    // 24 pages of 148.5 mm and eleven gaps of 1 mm
    CHECK(m.figure("pulled-out-length")->length.exact == Length::mm(3575));
    // 30 mm less 6 mm, at 1.5 mm each
    CHECK(figure_text(m, "pockets-room", UnitSystem::metric) == "16");
    CHECK(m.findings.empty());
}

TEST_CASE("a concertina on letter, by hand") {
    const journal::Measures m = journal::compute(zigzag_book(), with_pages(conditions(letter()), 12, Length::mm(0.125)));
    // 5 1/2 + 1/32 + 2 * 1/8 = 5 25/32 in, up; squares of about 1/8 in (Bean and Brodhead, Bookbinding for Beginners)
    CHECK(cut_as(m, "board", UnitSystem::us) == "2 of 5 13/16 x 8 3/4 in");
    CHECK(cut_as(m, "cover-paper", UnitSystem::us) == "2 of 7 1/16 x 10 in");
    CHECK(cut_as(m, "liner", UnitSystem::us) == "2 of 5 1/2 x 8 1/2 in");
    CHECK(cut_as(m, "guard", UnitSystem::us) == "13 of 13/16 x 8 3/8 in");
    CHECK(m.findings.empty());
}

TEST_CASE("a concertina is not sewn, and no sheet of it creeps") {
    const journal::Measures m = journal::compute(zigzag_book(), conditions(a4()));
    CHECK_FALSE(m.sewing);
    CHECK(m.page_stations.empty());
    CHECK(m.spine_stations.empty());
    CHECK(m.creep_least == Length());
    CHECK(m.creep_most == Length());
}

TEST_CASE("each sheet more takes one guard more and four thicknesses of paper") {
    journal::Conditions c = with_pages(conditions(a4()), 1, Length::mm(0.125));
    journal::Measures before = journal::compute(zigzag_book(), c);
    CHECK(before.piece("guard")->count == 2);  // from each end to its board
    for (c.sheets = 2; c.sheets <= 40; ++c.sheets) {
        const journal::Measures m = journal::compute(zigzag_book(), c);
        CHECK(m.piece("guard")->count == before.piece("guard")->count + 1);
        CHECK(m.bulk - before.bulk == Length::mm(0.5));
        CHECK(m.figure("pulled-out-length")->length.exact - before.figure("pulled-out-length")->length.exact == Length::mm(298));
        before = m;
    }
}

TEST_CASE("liners lie as high as the pages and hide the edges that are turned in, at every size") {
    for (const Paper& paper : {a4(), letter()})
        for (int percent = 40; percent <= 103; ++percent) {
            const journal::Measures m = journal::compute(zigzag_book(), conditions(paper, percent / 100.0));
            CAPTURE(percent, paper.name);
            for (const std::string& rule : failed(m)) CHECK(rule == "cover-paper-fits-sheet");
            CHECK(abs(m.piece("liner")->height.exact - m.conditions.page.height) <= Length::units(2));
            CHECK(m.piece("liner")->width.rounded < m.piece("board")->width.rounded);
        }
}

TEST_CASE("the ribbon has tails to tie, the band that may stand in has none") {
    const journal::Conditions c = with_pages(conditions(a4()), 12, Length::mm(0.125));
    const journal::Measures tied = journal::compute(zigzag_book(), c);
    // Round two boards and their thickness, 2 * 155 (as computed) + 2 * 8.4 mm, and two tails of 200 mm
    CHECK(tied.length("closing-ribbon")->length.rounded == Length::mm(730));
    const auto elastic = with_choice(zigzag_book(), "closing-ribbon", "closing-band");
    const journal::Measures banded = journal::compute(elastic, c);
    CHECK(tied.length("closing-ribbon")->length.exact - banded.length("closing-ribbon")->length.exact == Length::mm(400));
    CHECK(banded.length("closing-ribbon")->of->material == "closing-elastic");
    const auto without = with_choice(zigzag_book(), "closing-ribbon", "none");
    CHECK_FALSE(journal::compute(without, c).length("closing-ribbon"));
}

TEST_CASE("each check of the concertina can fail, and says what it measured") {
    journal::Conditions c = with_pages(conditions(a4()), 12, Length::mm(0.125));
    const auto now = [&] { return journal::compute(zigzag_book(), c); };
    SECTION("full sheets that are smaller than the pages") {
        c.cover_sheet = a4().size * 0.8;
        CHECK(failed(now()) == Rules{"cover-paper-fits-sheet"});
        CHECK(now().findings.at(0).message == "The cover paper needs 185 mm and the printed full sheet has 168 mm.");
        CHECK_THAT(now().findings.at(0).mend, Contains("100 %"));
    }
    SECTION("no full sheets: the buyer's own paper") {
        c.full_sheets = 0;
        c.cover_sheet = {};
        CHECK(now().findings.empty());
    }
    SECTION("thick board") {
        c.board_stock.caliper = Length::mm(12);
        CHECK(failed(now()) == Rules{"turn-in-covered"});
    }
    SECTION("small pages") {
        c = conditions(a4(), 0.33);  // 49 mm, of which a fifth is 9.8 mm
        c.cover_sheet = a4().size;
        CHECK(failed(now()) == Rules{"guards-narrow"});
        CHECK(now().findings.at(0).limit == "9.8 mm");
    }
    SECTION("many sheets of thick paper") {
        c = with_pages(c, 40, Length::mm(0.2));  // 160 thicknesses, 32 mm; 40 * 297 + 39 mm long
        CHECK(failed(now()) == Rules{"zigzag-thick", "zigzag-long"});
        CHECK(now().findings.at(0).measured == "32 mm");
        CHECK(now().findings.at(1).measured == "11919 mm");
        CHECK(now().findings.at(1).level == Level::note);
    }
    SECTION("full pockets") {
        c.glued_in = Length::mm(25);
        CHECK(failed(now()) == Rules{"zigzag-thick"});
    }
    SECTION("printed board under thin paper, and heavy pages") {
        c.board_stock.printed = true;
        c.page_stock.grammage = 200;
        CHECK(failed(now()) == Rules{"board-shows-through", "fold-scored"});
    }
}
