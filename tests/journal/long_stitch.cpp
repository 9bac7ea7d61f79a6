// SPDX-License-Identifier: GPL-3.0-or-later
// The journal pipeline/journals/long-stitch.yaml as it stands in the pipeline.
#include "journal/real_journal.h"

#include <cmath>

using namespace qw;
using namespace qw::example;
using Catch::Matchers::Contains;
using Rules = std::vector<std::string>;

namespace {

const kit::JournalTemplate& soft_book() { return real_journal("long-stitch"); }

}  // namespace

TEST_CASE("19 sections swell by 19 threads, about 9.5 mm") {
    // D. W. Jones, University of Iowa, long stitch: one thread thickness, about 0.5 mm compressed, for each section.
    const journal::Measures m = journal::compute(soft_book(), with_pages(conditions(a4()), 95, Length::mm(0.125)));
    CHECK(m.sewing->signatures == 19);
    CHECK(m.named_length("swell") == Length::mm(9.5));
}

TEST_CASE("a long-stitch journal on A4, by hand") {
    const journal::Measures m = journal::compute(soft_book(), with_pages(conditions(a4()), 12, Length::mm(0.125)));
    // Three signatures; 3 mm of leaves and 1.5 mm of thread are 1.5 mm each, but rows stand 3 mm apart.
    CHECK(m.sewing->rows == 3);
    CHECK(m.sewing->row_gap.metric == Length::mm(3));
    // 2 * 3 + 2 * 4
    CHECK(figure_text(m, "spine-of-cover", UnitSystem::metric) == "14 mm");
    CHECK(figure_text(m, "edge-to-row", UnitSystem::metric) == "4 mm");
    // 2 * (148.5 + 5) + 14 + 2 * pi / 2 = 324.14; 210 + 2 * 3
    CHECK(cut_as(m, "soft-cover", UnitSystem::metric) == "1 of 324.5 x 216 mm");
    // 153.5 - 16 and 216 - 16; the strip ends as high as the pages
    CHECK(cut_as(m, "panel", UnitSystem::metric) == "2 of 137.5 x 200 mm");
    CHECK(cut_as(m, "spine-strip", UnitSystem::metric) == "1 of 14 x 210 mm");
    // The holes of the spine are those of the pages and the head square.
    REQUIRE(m.page_stations.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) CHECK(m.spine_stations[i].exact - m.page_stations[i].exact == Length::mm(3));
    // The long stitch goes over half of the way between the end stations.
    CHECK(m.page_stations[2].exact - m.page_stations[1].exact == Length::mm(92));
    CHECK(m.findings.empty());
}

TEST_CASE("on letter the long-stitch journal has the inch ruler's own lengths") {
    const journal::Measures m = journal::compute(soft_book(), with_pages(conditions(letter()), 20, Length::mm(0.125)));
    CHECK(m.sewing->rows == 4);
    CHECK(m.sewing->row_gap.us == Length::inches(0.125));
    // 3 * 1/8 + 2 * 3/16
    CHECK(m.figure("spine-of-cover")->length.us == Length::inches(0.75));
    // 2 * (5 1/2 + 3/16) + 3/4 + pi / 32 = 12.223 in
    CHECK(cut_as(m, "soft-cover", UnitSystem::us) == "1 of 12 1/4 x 8 3/4 in");
    // Stations 1/2 in from the ends, where kettle stitches are (Bean and Brodhead, Bookbinding for Beginners).
    CHECK(m.page_stations.front().us == Length::inches(0.5));
    CHECK(m.findings.empty());
}

TEST_CASE("rows stand on the ruler's marks, as far apart as their signatures are thick, inside the spine", "[many]") {
    journal::Conditions c = conditions(a4());
    for (const Paper& paper : {a4(), letter()})
        for (const double caliper : {0.08, 0.125, 0.25})
            for (const double glued : {0.0, 5.0}) {
                c = with_pages(conditions(paper), 1, Length::mm(caliper));
                c.glued_in = Length::mm(glued);
                for (; c.sheets <= 40; ++c.sheets) {
                    const journal::Measures m = journal::compute(soft_book(), c);
                    const bool metric = paper.ruler == UnitSystem::metric;
                    const Length gap = m.named_length("row-gap"), spine = m.named_length("spine-width"), least = metric ? Length::mm(3) : Length::inches(0.125);
                    const double steps = metric ? gap.in_mm() / 0.5 : gap.in_inches() * 16;
                    CHECK(std::abs(steps - std::round(steps)) < 1e-6);
                    CHECK(gap + Length::units(2) >= least);
                    CHECK(gap * m.sewing->rows + Length::mm(0.01) >= m.named_length("filled-spine"));
                    CHECK(spine + Length::mm(0.01) >= m.named_length("filled-spine"));
                    // Outside the outer rows there is at least as much cover as asked for.
                    CHECK(spine - gap * (m.sewing->rows - 1) >= 2 * (metric ? Length::mm(4) : Length::inches(3.0 / 16)) - Length::units(4));
                    if (m.sewing->rows > 1) CHECK(abs(m.sewing->row_gap.rounded - gap) <= Length::units(2));
                }
            }
}

TEST_CASE("the thread climbs from row to row") {
    journal::Conditions c = with_pages(conditions(a4()), 12, Length::mm(0.125));
    const journal::Measures m = journal::compute(soft_book(), c);
    // From the first to the last station of each signature: H - 2e.
    CHECK(abs(m.sewing->path - Length::mm(184)) < Length::mm(0.001));
    // 3 * (184 + 15) + 2 * 3 + 2 * 150 = 903
    CHECK(m.length("sewing-thread")->length.rounded == Length::mm(910));
    // Twice round 153.5 + 14 + 4 mm, both sides, and 150 mm
    CHECK(m.length("wrap-cord")->length.rounded == Length::mm(840));
    CHECK(m.sewing->of->goes_on);
    CHECK_FALSE(m.sewing->of->begins_inside);
}

TEST_CASE("a thinner cover takes less to go round the spine, and thicker thread more of it") {
    const journal::Conditions c = with_pages(conditions(a4()), 12, Length::mm(0.125));
    // 2 * (148.5 + 5) + 14, and half a turn round the middle of 2 mm of leather or 0.4 mm of paper: 3.14 and 0.63 mm
    CHECK(cut_as(journal::compute(with_choice(soft_book(), "soft-cover", "felt"), c), "soft-cover", UnitSystem::metric) == "1 of 324.5 x 216 mm");
    const auto paper = with_choice(soft_book(), "soft-cover", "heavy-paper");
    const journal::Measures thin = journal::compute(paper, c), twined = journal::compute(with_choice(soft_book(), "sewing-thread", "waxed-twine"), c);
    CHECK(cut_as(thin, "soft-cover", UnitSystem::metric) == "1 of 322 x 216 mm");
    // Twice round 153.5 + 14 + 0.8 mm, both sides, and 150 mm: 823.2
    CHECK(thin.length("wrap-cord")->length.rounded == Length::mm(830));
    // Three signatures of 1 mm of leaves and 1 mm of twine each.
    CHECK(twined.named_length("swell") == Length::mm(3));
}

TEST_CASE("what may be left out of the long-stitch journal is left out, and the glue with the last that needs it") {
    const journal::Conditions c = conditions(a4());
    const auto without_panels = with_choice(soft_book(), "panel", "none");
    const auto bare = with_choice(without_panels, "spine-strip", "none");
    CHECK(journal::compute(without_panels, c).items.size() == 1);
    const journal::Measures m = journal::compute(bare, c);
    CHECK(m.items.empty());
    CHECK_FALSE(m.piece("panel"));
    CHECK_FALSE(m.piece("spine-strip"));
    CHECK(with_choice(soft_book(), "soft-cover", "felt").pieces.front().material == "wool-felt");
    // Panels that are not there need no sheet that is large enough for them.
    journal::Conditions small = c;
    small.cover_sheet = a4().size * 0.5;
    CHECK(failed(journal::compute(soft_book(), small)) == Rules{"panel-fits-sheet"});
    CHECK(journal::compute(bare, small).findings.empty());
}

TEST_CASE("each check of the long stitch can fail, and says what it measured") {
    journal::Conditions c = with_pages(conditions(a4()), 12, Length::mm(0.125));
    const auto now = [&] { return journal::compute(soft_book(), c); };
    SECTION("thick paper") {
        c = with_pages(c, 20, Length::mm(0.25));  // 5 sheets, 10 leaves: 2.5 mm of 1 to 2 mm (University of Brighton, Making sections)
        CHECK(failed(now()) == Rules{"signature-thickness"});
        CHECK(now().findings.at(0).measured == "2.5 mm");
    }
    SECTION("a spine that is too wide") {
        c.glued_in = Length::mm(40);  // 44.5 mm: 15 mm a row, three rows
        CHECK(failed(now()) == Rules{"rows-on-spine"});
        CHECK(now().findings.at(0).measured == "45 mm");
    }
    SECTION("very thick paper") {
        c.page_stock.caliper = Length::mm(1.2);  // 3 * 1.2 * pi / 2 = 5.7 mm
        CHECK(failed(now()) == Rules{"signature-thickness", "creep-inside-square"});
    }
    SECTION("small print") {
        c = conditions(a4(), 0.3);
        CHECK(failed(now()) == Rules{"station-near-end"});
        CHECK(now().findings.at(0).measured == "3.9 mm");
    }
    SECTION("full sheets that are smaller than the pages") {
        c.cover_sheet = a4().size * 0.6;
        CHECK(failed(now()) == Rules{"panel-fits-sheet"});
        CHECK(now().findings.at(0).message == "A panel needs 200 mm and the printed full sheet has 178.2 mm.");
        CHECK_THAT(now().findings.at(0).mend, Contains("100 %"));
    }
    SECTION("heavy paper") {
        c.page_stock.grammage = 180;
        CHECK(failed(now()) == Rules{"fold-scored"});
    }
}
