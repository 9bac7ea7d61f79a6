// SPDX-License-Identifier: GPL-3.0-or-later
// The journal pipeline/journals/wrapped-booklet.yaml as it stands in the pipeline.
#include "journal/real_journal.h"

#include <random>

using namespace qw;
using namespace qw::example;
using journal::compute;
using journal::Measures;

namespace {

const kit::JournalTemplate& booklet() { return real_journal("wrapped-booklet"); }

/// Eight printed faces, one full sheet.
journal::Conditions small_kit(const Paper& paper, double scale = 1) {
    auto c = conditions(paper, scale);
    c.sheets = 4;
    c.full_sheets = 1;
    return c;
}

std::vector<std::string> rules(const Measures& m) {
    std::vector<std::string> all;
    for (const Finding& f : m.findings) all.push_back(f.rule);
    return all;
}

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("one full sheet, folded once, is the cover at full size on both papers") {
    const Measures on_a4 = compute(booklet(), small_kit(a4()));
    CHECK(on_a4.piece("cover-paper")->text(UnitSystem::metric) == "297 x 210 mm");
    CHECK(on_a4.piece("cover-paper")->count == 1);
    CHECK(on_a4.findings.empty());
    const Measures on_letter = compute(booklet(), small_kit(letter()));
    CHECK(on_letter.piece("cover-paper")->text(UnitSystem::us) == "11 x 8 1/2 in");
    CHECK(on_letter.findings.empty());
    // Boards lie between fold and edge: 148.5 mm less half the way round the fold (8 leaves of 0.12 mm, π/4), 5 and 3 mm.
    CHECK(on_a4.piece("board")->width.exact.in_mm() == Approx(148.5 - 0.96 * 0.7853982 - 8).margin(0.001));
    CHECK(on_a4.piece("board")->text(UnitSystem::metric) == "139.5 x 204 mm");
    CHECK(on_a4.piece("liner")->text(UnitSystem::metric) == "145.5 x 210 mm");
}

TEST_CASE("with smaller pages and a full sheet at full size, the cover goes round the fold") {
    for (const Paper& paper : {a4(), letter()}) {
        auto c = small_kit(paper, 0.85);
        c.cover_sheet = paper.size;
        const Measures m = compute(booklet(), c);
        CHECK(m.findings.empty());
        // Half a turn round the closed pages.
        CHECK(m.piece("cover-paper")->width.exact.in_mm() == Approx(2 * c.page.width.in_mm() + m.bulk.in_mm() * 1.5707963).margin(0.001));
        CHECK(m.piece("cover-paper")->height.exact == c.page.height);
    }
}

TEST_CASE("a three-station pamphlet stitch is as long as twice the distance between its end stations") {
    // The path goes from the middle to one end, along the fold to the other end and back to the middle, whatever the
    // inset; a five-station stitch is just as long (geometry of the stitch in IU Libraries, pamphlet binding).
    std::mt19937 chance(5);
    std::uniform_real_distribution<double> scales(0.30, 1.0);
    for (int run = 0; run < 60; ++run) {
        const Measures m = compute(booklet(), small_kit(run % 2 ? a4() : letter(), scales(chance)));
        REQUIRE(m.page_stations.size() == 3);
        const Length head = m.page_stations[0].exact, middle = m.page_stations[1].exact, tail = m.page_stations[2].exact;
        const Length walked = (middle - head) + (tail - head) + (tail - middle);
        const Length tails = 2 * (m.ruler == UnitSystem::metric ? Length::mm(90) : Length::inches(3.5));
        CHECK(abs(m.lengths.at(0).length.exact - tails - walked) <= Length::units(6));
    }
}

TEST_CASE("thread at full size lies between its path and 2.5 times the height") {
    // 2.5 times the height: IU Libraries Book Repair Manual, pamphlet binding.
    for (const Paper& paper : {a4(), letter()}) {
        const Measures m = compute(booklet(), small_kit(paper));
        CHECK(m.lengths.at(0).length.rounded > 2 * (m.page_stations[2].exact - m.page_stations[0].exact));
        CHECK(m.lengths.at(0).length.rounded <= 2.5 * m.conditions.page.height);
    }
    // 8 1/2 in high, 3/4 in from each end: the path is 14 in.
    const Measures m = compute(booklet(), small_kit(letter()));
    CHECK(2 * (m.page_stations[2].exact - m.page_stations[0].exact) == Length::inches(14));
    CHECK(m.lengths.at(0).length.rounded == Length::inches(21));
}

TEST_CASE("each check of the booklet can fail") {
    auto c = small_kit(a4());
    SECTION("too many sheets") {
        c.sheets = 7;
        CHECK(rules(compute(booklet(), c)) == Texts{"journal-sheets-a-signature"});
    }
    SECTION("cover shorter than the pages") {
        c.cover_sheet.width = Length::mm(205);
        const Measures m = compute(booklet(), c);
        CHECK(rules(m) == Texts{"journal-cover-paper-covers-pages"});
        CHECK(m.findings[0].measured == "5 mm");
    }
    SECTION("cover narrower than the pages") {
        c.cover_sheet.height = Length::mm(288);
        CHECK(rules(compute(booklet(), c)) == Texts{"journal-fore-edge-trimmed"});
    }
    SECTION("thick board") {
        c.board_stock.caliper = Length::mm(3);
        CHECK(rules(compute(booklet(), c)) == Texts{"journal-liner-covers-board", "journal-board-clears-fold"});
    }
    SECTION("small print") {
        CHECK(rules(compute(booklet(), small_kit(a4(), 0.25))) == Texts{"journal-station-near-end"});
    }
    SECTION("so many sheets that the fold takes the cover") {
        c = small_kit(a4(), 0.30);
        c.sheets = 60;  // 14.4 mm thick, 22.6 mm round, of 89.1 mm: boards of 25 mm
        CHECK(rules(compute(booklet(), c)) == Texts{"journal-fore-edge-trimmed", "journal-sheets-a-signature"});
        c.page_stock.caliper = Length::mm(0.3);  // 56.5 mm round: 16.3 mm on each side, and 8 mm beside the board
        const Measures m = compute(booklet(), c);
        CHECK(rules(m) == Texts{"journal-fore-edge-trimmed", "journal-board-wide-enough", "journal-sheets-a-signature"});
        CHECK(m.findings.at(1).measured == "8.28 mm");
        CHECK(m.piece("board")->width.rounded == Length::mm(10));
    }
    SECTION("full pockets") {
        c.glued_in = Length::mm(5);
        const Measures m = compute(booklet(), c);
        CHECK(rules(m) == Texts{"journal-glued-in-fits"});
        CHECK_THAT(m.findings[0].message, Catch::Matchers::Contains("0.5 mm more"));
    }
    SECTION("printed board and a heavy cover") {
        c.board_stock.printed = true;
        CHECK(rules(compute(booklet(), c)) == Texts{"journal-board-shows-through"});
        c.cover_stock.grammage = 200;
        CHECK(rules(compute(booklet(), c)) == Texts{"journal-fold-scored"});
    }
    SECTION("no full sheet: the buyer's own paper") {
        c.full_sheets = 0;
        c.cover_sheet = {};
        const Measures m = compute(booklet(), c);
        CHECK(m.findings.empty());
        CHECK(m.piece("cover-paper")->width.exact > Length::mm(298));
    }
}

TEST_CASE("a cover at any scale of its own is refused with a reason, never impossible") {
    for (int pages = 30; pages <= 103; pages += 5)
        for (int cover = 30; cover <= 103; cover += 5) {
            auto c = small_kit(a4(), pages / 100.0);
            c.cover_sheet = a4().size * (cover / 100.0);
            CAPTURE(pages, cover);
            const Measures m = compute(booklet(), c);
            if (cover >= pages) CHECK_FALSE(has_errors(m.findings));
            if (cover < pages - 5) CHECK(has_errors(m.findings));
            CHECK(m.piece("board")->width.rounded < m.piece("liner")->width.rounded);
        }
}

TEST_CASE("the innermost page loses what the cover lacks and what it creeps out") {
    auto c = small_kit(a4());
    c.page_stock.caliper = Length::mm(0.10);
    // 8 leaves of 0.10 mm lift the cover's fold: 0.8 * pi / 4; 4 sheets creep 0.30 to 0.471 mm (one caliper to pi / 2 of it
    // for each nested sheet, geometry).
    const Measures m = compute(booklet(), c);
    CHECK(m.creep_most.in_mm() == Approx(0.471).margin(0.0005));
    CHECK(m.figure("fore-edge-trimmed")->length.exact.in_mm() == Approx(0.6283 + 0.4712).margin(0.001));
}

TEST_CASE("the booklet works from 30 to 100 per cent on both papers, with greyboard of 1 mm") {
    for (int percent = 30; percent <= 100; ++percent)
        for (const Paper& paper : {a4(), letter()}) {
            CAPTURE(percent, paper.name);
            const Measures m = compute(booklet(), small_kit(paper, percent / 100.0));
            CHECK_FALSE(has_errors(m.findings));
            CHECK(m.piece("board")->width.rounded < m.piece("liner")->width.rounded);
        }
}
