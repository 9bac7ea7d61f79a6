// SPDX-License-Identifier: GPL-3.0-or-later
// The journal pipeline/journals/soft-spine.yaml as it stands in the pipeline.
#include "journal/real_journal.h"

#include <numbers>
#include <random>

using namespace qw;
using namespace qw::example;
using journal::compute;
using journal::Measures;

namespace {

const kit::JournalTemplate& soft_spine() { return real_journal("soft-spine"); }

std::string text(const Measures& m, const std::string& piece, UnitSystem system) {
    REQUIRE(m.piece(piece));
    return std::to_string(m.piece(piece)->count) + " of " + m.piece(piece)->text(system);
}

Length in(const journal::Shown& s, UnitSystem system) { return system == UnitSystem::metric ? s.metric : s.us; }

std::vector<std::string> texts(const std::vector<journal::Shown>& stations, UnitSystem system) {
    std::vector<std::string> all;
    for (const journal::Shown& s : stations) all.push_back(show(in(s, system), system));
    return all;
}

const journal::CutLength& cut(const Measures& m, const std::string& name) {
    for (const journal::CutLength& one : m.lengths)
        if (one.of->name == name) return one;
    FAIL("no length " + name);
    return m.lengths.front();
}

std::vector<std::string> rules(const Measures& m, Level level) {
    std::vector<std::string> all;
    for (const Finding& f : m.findings)
        if (f.level == level) all.push_back(f.rule);
    return all;
}

using Texts = std::vector<std::string>;

}  // namespace

// Values: common practice, no source.
TEST_CASE("soft-spine on A4, borderless, full size") {
    const Measures m = compute(soft_spine(), conditions(a4()));
    CHECK(text(m, "board", UnitSystem::metric) == "2 of 153 x 216 mm");
    CHECK(text(m, "spine", UnitSystem::metric) == "1 of 15 x 216 mm");
    CHECK(text(m, "liner", UnitSystem::metric) == "2 of 147 x 210 mm");
    CHECK(text(m, "cover-paper", UnitSystem::metric) == "2 of 179 x 242 mm");
    CHECK(text(m, "hinge-tape", UnitSystem::metric) == "1 of 38 x 452 mm");
    CHECK(texts(m.page_stations, UnitSystem::metric) == Texts{"37 mm", "105 mm", "173 mm"});
    CHECK(texts(m.spine_stations, UnitSystem::metric) == Texts{"40 mm", "108 mm", "176 mm"});
    // Twice the 136 mm between the end stations, a little, and 100 mm.
    CHECK(cut(m, "sewing-elastic").count == 2);
    CHECK(cut(m, "sewing-elastic").length.rounded == Length::mm(2 * 136 + 6 + 100));
    CHECK(cut(m, "closing-band").length.rounded == Length::mm(2 * 153 + 15 + 2 * 1));
    REQUIRE(!m.items.empty());
    CHECK(m.items[0].of->name == "eyelet");
    CHECK(m.items[0].count == 3);
    CHECK(show_metric(m.items[0].of->size->metric) == "3 mm");
    CHECK(m.findings.empty());
}

// Values: common practice, no source.
TEST_CASE("soft-spine on letter, borderless, full size") {
    const Measures m = compute(soft_spine(), conditions(letter()));
    CHECK(text(m, "board", UnitSystem::us) == "2 of 5 5/8 x 8 3/4 in");
    CHECK(text(m, "spine", UnitSystem::us) == "1 of 5/8 x 8 3/4 in");
    CHECK(text(m, "liner", UnitSystem::us) == "2 of 5 3/8 x 8 1/2 in");
    CHECK(text(m, "cover-paper", UnitSystem::us) == "2 of 6 5/8 x 9 3/4 in");
    CHECK(text(m, "hinge-tape", UnitSystem::us) == "1 of 1 1/2 x 18 1/4 in");
    CHECK(texts(m.spine_stations, UnitSystem::us) == Texts{"1 1/2 in", "4 3/8 in", "7 1/4 in"});  // 1 1/2 in from each end of 8 3/4 in
    CHECK(texts(m.page_stations, UnitSystem::us) == Texts{"1 3/8 in", "4 1/4 in", "7 1/8 in"});
    CHECK(cut(m, "sewing-elastic").length.rounded == Length::inches(2 * 5.75 + 0.25 + 4));
    CHECK(cut(m, "closing-band").length.rounded == Length::inches(2 * 5.625 + 0.625 + 2 * 0.0625));
    CHECK(show_us(m.items.at(0).of->size->us) == "1/8 in");
    CHECK(m.findings.empty());
}

// Values: common practice, no source.
TEST_CASE("the soft-spine's fixed and printed lengths") {
    const auto named = [](const std::string& name) -> const kit::NamedLength& {
        for (const kit::NamedLength& length : soft_spine().lengths)
            if (length.name == name) return length;
        FAIL("no length " + name);
        return soft_spine().lengths.front();
    };
    const auto [name, metric, us] = GENERATE(table<std::string, std::string, std::string>({
        {"liner-inset", "3 mm", "1/8 in"},
        {"turn-in", "13 mm", "1/2 in"},
        {"corner-margin", "0.5 mm", "1/16 in"},
        {"hinge-gap", "1 mm", "1/16 in"},
        {"eyelet-hole", "3 mm", "1/8 in"},
        {"spine-width", "15 mm", "5/8 in"},
    }));
    CAPTURE(name);
    CHECK(show_metric(named(name).value.metric) == metric);
    CHECK(show_us(named(name).value.us) == us);
    CHECK_FALSE(named(name).printed);
    CHECK(named("station-inset").printed);
    for (const kit::NamedLength& length : soft_spine().lengths) CHECK_FALSE(length.why.empty());
    // Squares: 3 mm (Indiana University Libraries, Book Repair Manual), 1/8 in (Vaughn, Printing and Bookbinding for Schools).
    CHECK(named("head-square").value.metric == Length::mm(3));
    CHECK(named("head-square").value.us == Length::inches(0.125));
    // Turn-in: seldom more than 1/2 in in edition binding (Roberts and Etherington, "cover turned-in").
    CHECK(named("turn-in").value.us == Length::inches(0.5));
    // What is bought is what the sheets call it.
    for (const kit::ItemTemplate& item : soft_spine().items)
        if (item.name == "eyelet") {
            CHECK(item.size->metric == named("eyelet-hole").value.metric);
            CHECK(item.size->us == named("eyelet-hole").value.us);
        }
}

TEST_CASE("at half size the pages halve and the spine strip keeps its width") {
    const Measures m = compute(soft_spine(), conditions(a4(), 0.5));
    CHECK(text(m, "spine", UnitSystem::metric) == "1 of 15 x 111 mm");
    CHECK(text(m, "board", UnitSystem::metric) == "2 of 79 x 111 mm");  // 74.25 + 4.5 = 78.75 mm, up
    CHECK(texts(m.page_stations, UnitSystem::metric) == Texts{"18.5 mm", "52.5 mm", "86.5 mm"});
    CHECK(m.piece("hinge-tape")->width.rounded == Length::mm(38));
    // Letter: 5/8 in as well.
    CHECK(compute(soft_spine(), conditions(letter(), 0.5)).piece("spine")->width.rounded == Length::inches(0.625));
}

TEST_CASE("at half size, full sheets printed with the pages are just large enough") {
    // A4: 78.75 + 26 = 104.75 mm, cut as 105 mm, of 105 mm.
    const Measures on_a4 = compute(soft_spine(), conditions(a4(), 0.5));
    CHECK(on_a4.piece("cover-paper")->width.exact == Length::mm(104.75));
    CHECK(on_a4.piece("cover-paper")->width.rounded == Length::mm(105));
    CHECK(on_a4.findings.empty());
    // Letter: 4 1/4 + 1/4 + 1 in of 5 1/2 in. With a metric ruler it would be 139.95 mm, cut as 140 mm, of 139.7 mm.
    const Measures on_letter = compute(soft_spine(), conditions(letter(), 0.5));
    CHECK(on_letter.piece("cover-paper")->height.rounded == Length::inches(5.5));
    CHECK(rules(on_letter, Level::error).empty());
    CHECK(rules(on_letter, Level::warning) == Texts{"journal-cover-paper-fits-sheet"});
    CHECK(on_letter.findings.at(0).measured == "140 mm");
    CHECK(on_letter.findings.at(0).limit == "139.7 mm");
}

TEST_CASE("below half size the cover paper no longer fits, unless the full sheets stay as they are") {
    for (const Paper& paper : {a4(), letter()}) {
        auto c = conditions(paper, 0.45);
        const Measures small = compute(soft_spine(), c);
        CHECK(rules(small, Level::error) == Texts{"journal-cover-paper-fits-sheet"});
        CHECK_THAT(small.findings.at(0).mend, Catch::Matchers::Contains("100 %"));
        c.cover_sheet = paper.size;
        CHECK(compute(soft_spine(), c).findings.empty());
        c.full_sheets = 0;  // the buyer's own paper
        c.cover_sheet = {};
        CHECK(compute(soft_spine(), c).findings.empty());
    }
}

TEST_CASE("letter at 94 per cent with either ruler") {
    const Measures m = compute(soft_spine(), conditions(letter(), 0.94));
    CHECK(m.piece("board")->height.metric == Length::mm(209));  // 202.946 + 6 = 208.946 mm
    CHECK(m.piece("board")->height.exact == Length::mm(209.296));
    CHECK(m.piece("board")->height.us == Length::inches(8.25));
}

TEST_CASE("bulk counts two leaves a folded sheet; creep lies between a sharp and a round fold") {
    auto c = conditions(a4());
    c.sheets = 8;
    c.page_stock.caliper = Length::mm(0.10);
    const Measures m = compute(soft_spine(), c);
    CHECK(m.bulk == Length::mm(1.6));
    // Four sheets of 0.10 mm: 3 × 0.10 mm with a sharp fold, times π/2 (arc of a half turn) with a round one.
    CHECK(m.creep_least == Length::mm(0.30));
    CHECK(m.creep_most.in_mm() == Approx(0.471).margin(0.0005));
    // One inch of 500 pages-per-inch paper is 250 leaves (Rebsamen, in Welbound): 125 folded sheets of 0.1016 mm.
    c.sheets = 125;
    c.page_stock.caliper = Length::inches(1.0 / 250);
    CHECK(compute(soft_spine(), c).bulk.in_inches() == Approx(1).margin(0.001));
    c.sheets = 0;
    CHECK(compute(soft_spine(), c).creep_most == Length());
}

TEST_CASE("elastic is longer than the way it goes and shorter than the thread of a rule of thumb") {
    for (const Paper& paper : {a4(), letter()}) {
        const Measures m = compute(soft_spine(), conditions(paper));
        const Length path = 2 * (m.page_stations.back().exact - m.page_stations.front().exact);
        CHECK(cut(m, "sewing-elastic").length.rounded > path);
        // 2.5 times the height (IU Libraries Book Repair Manual, pamphlet binding).
        CHECK(cut(m, "sewing-elastic").length.rounded < 2.5 * m.conditions.page.height);
    }
}

TEST_CASE("a signature has at most nine sheets, which this journal states with a reason") {
    auto c = conditions(a4());
    c.sheets = 18;
    CHECK(compute(soft_spine(), c).findings.empty());
    c.sheets = 19;
    const Measures m = compute(soft_spine(), c);
    CHECK(rules(m, Level::error) == Texts{"journal-sheets-a-signature"});
    CHECK(m.findings.at(0).measured == "10");
    CHECK(m.findings.at(0).limit == "9");
    // Copy paper in a casebound book: 4 to 5 folios (IU Libraries, Making a Casebound Book). This one is another book.
    for (const kit::NamedNumber& number : soft_spine().numbers)
        if (number.name == "most-sheets") {
            CHECK(number.value > 5);
            CHECK_FALSE(number.why.empty());
            CHECK_THAT(number.published, Catch::Matchers::Contains("4 to 5 folios"));
        }
}

TEST_CASE("each check of the soft-spine can fail, and says what it measured") {
    auto c = conditions(a4());
    SECTION("pages that are thicker than the spine") {
        c.page_stock.caliper = Length::mm(0.9);
        const Measures m = compute(soft_spine(), c);
        // 24 leaves of 0.9 mm and two elastics of 1 mm: 23.6 mm, 8.6 mm more than 15 mm.
        CHECK(rules(m, Level::warning) == Texts{"journal-spine-fill", "journal-creep-inside-square"});
        CHECK(m.findings.at(0).message == "The pages with their elastic and what is glued in are 8.6 mm thicker than the spine is wide.");
        CHECK(m.findings.at(0).measured == "23.6 mm");
    }
    SECTION("thick board") {
        c.board_stock.caliper = c.spine_stock.caliper = Length::mm(12);
        const Measures m = compute(soft_spine(), c);
        CHECK(rules(m, Level::error) == Texts{"journal-turn-in-covered"});
        CHECK(rules(m, Level::warning) == Texts{"journal-hinge-closes"});
    }
    SECTION("small print") {
        const Measures m = compute(soft_spine(), conditions(a4(), 0.26));  // 37 mm becomes 9.6 mm
        CHECK(rules(m, Level::warning) == Texts{"journal-station-near-end"});
    }
    SECTION("full sheets smaller than the pages") {
        c.cover_sheet = a4().size * 0.8;
        const Measures m = compute(soft_spine(), c);
        CHECK(rules(m, Level::error) == Texts{"journal-cover-paper-fits-sheet"});
        CHECK(rules(m, Level::warning) == Texts{"journal-liner-fits-sheet"});
        // 179 mm of 168 mm is 11 mm short, 242 mm of 237.6 mm only 4.4 mm: the worse one is told.
        CHECK(m.findings.at(0).message == "The cover paper needs 179 mm and the printed full sheet has 168 mm.");
    }
    SECTION("other lengths") {
        const auto with = [](const std::string& name, Length value) {
            kit::JournalTemplate changed = soft_spine();
            for (kit::NamedLength& length : changed.lengths)
                if (length.name == name) length.value = {value, value};
            return rules(compute(changed, conditions(a4())), Level::error);
        };
        CHECK(with("eyelet-hole", Length::mm(12)) == Texts{"journal-eyelet-inside-spine"});
        CHECK(with("liner-inset", Length()) == Texts{"journal-liner-inside-board"});
    }
}

TEST_CASE("with any print size fixed sizes stay and printed ones shrink", "[many][property]") {
    std::mt19937 chance(7);
    std::uniform_real_distribution<double> scales(0.30, 1.03);
    for (int run = 0; run < 200; ++run) {
        const double scale = scales(chance);
        const Paper paper = run % 2 ? letter() : a4();
        const auto c = conditions(paper, scale);
        const Measures m = compute(soft_spine(), c), full = compute(soft_spine(), conditions(paper));
        CAPTURE(scale, paper.name);
        CHECK(m.piece("spine")->width.exact == full.piece("spine")->width.exact);
        CHECK(m.piece("hinge-tape")->width.rounded == full.piece("hinge-tape")->width.rounded);
        const Length quantum = Length::units(4);
        CHECK(abs((m.piece("board")->width.exact - c.page.width) - (full.piece("board")->width.exact - full.conditions.page.width)) <= quantum);
        CHECK(abs((m.piece("cover-paper")->height.exact - m.piece("board")->height.exact) -
                  (full.piece("cover-paper")->height.exact - full.piece("board")->height.exact)) <= quantum);
        CHECK(abs(m.page_stations.front().exact - full.page_stations.front().exact * scale) <= quantum);
        CHECK(abs(m.spine_stations[1].exact * 2 - m.piece("board")->height.exact) <= quantum);
        // Boards cover, liners go in, with either ruler.
        for (const auto system : {UnitSystem::metric, UnitSystem::us}) {
            CHECK(in(m.piece("board")->width, system) + snap_to_step >= c.page.width);
            CHECK(in(m.piece("liner")->width, system) < in(m.piece("board")->width, system));
        }
        CHECK(m.bulk == full.bulk);
        CHECK(m.creep_most == full.creep_most);
    }
}
