// SPDX-License-Identifier: GPL-3.0-or-later
// What fits into the soft-spine journal and what it fits on: full sheets, corners, holes, pockets, board.
#include "journal/real_journal.h"

#include "base/edition.h"

#include <numbers>

using namespace qw;
using namespace qw::example;
using Catch::Matchers::Contains;
using Rules = std::vector<std::string>;

namespace {

const kit::JournalTemplate& strip_book() { return real_journal("soft-spine"); }

/// Printed with margins at long and short edges, white border cut off, at the buyer's percentage.
journal::Conditions with_margins(const Paper& paper, double percent, Length short_edges = Length::mm(12.7)) {
    const Edition edition{paper, Print::bordered, {Length::mm(6.35), short_edges, Length::mm(6.35), short_edges}};
    auto c = conditions(paper, fit_of(edition, true).scale * percent / 100);
    c.print = Print::bordered;
    return c;
}

}  // namespace

// Margins of 6.35 mm all round, and of 6.35 and 12.7 mm: generic printer descriptions in CUPS, 18 pt and 18/36 pt.
TEST_CASE("bordered, the cover papers fit down to a little more than half size, and the remedy is told", "[many]") {
    // The sheet has to be 30.5 mm wider than the page on A4 and 1 1/4 in longer than it is high on letter; half of the sheet is the page.
    const auto smallest = [](const Paper& paper, Length short_edges) {
        const double at_full = with_margins(paper, 100, short_edges).scale;
        return 100 / at_full * (paper.ruler == UnitSystem::metric ? 30.5 / (210 - 148.5) : 1.25 / (11 - 8.5));
    };
    CHECK(smallest(a4(), Length::mm(6.35)) == Approx(52.8).margin(0.05));
    CHECK(smallest(letter(), Length::mm(6.35)) == Approx(53.1).margin(0.05));
    for (const Paper& paper : {a4(), letter()})
        for (const Length short_edges : {Length::mm(6.35), Length::mm(12.7)}) {
            CAPTURE(paper.name, short_edges.in_mm());
            const double limit = smallest(paper, short_edges);
            const journal::Measures small = journal::compute(strip_book(), with_margins(paper, limit - 0.5, short_edges));
            CHECK(has_errors(small.findings));
            CHECK(small.findings.at(0).rule == "journal-cover-paper-fits-sheet");
            CHECK_THAT(small.findings.at(0).mend, Contains("Print the full sheets at 100 %"));
            // Rounding up takes a step more; from there on they fit.
            for (double percent = limit + 3; percent <= 100; percent += 0.5)
                CHECK_FALSE(has_errors(journal::compute(strip_book(), with_margins(paper, percent, short_edges)).findings));
            // The remedy holds: full sheets of full size for the smallest pages.
            auto c = with_margins(paper, 30, short_edges);
            c.cover_sheet = with_margins(paper, 100, short_edges).cover_sheet;
            CHECK_FALSE(has_errors(journal::compute(strip_book(), c).findings));
        }
}

TEST_CASE("a liner of half a full sheet fits at every size, without a slack of its own", "[many]") {
    for (int percent = 30; percent <= 103; ++percent)
        for (const Paper& paper : {a4(), letter()})
            for (const auto& c : {conditions(paper, percent / 100.0), with_margins(paper, percent)})
                for (const Finding& f : journal::compute(strip_book(), c).findings) {
                    CAPTURE(percent, paper.name, f.message);
                    CHECK(f.rule != "journal-liner-fits-sheet");
                }
}

// 1.5 to 2 board thicknesses: from memory. 1/8 in beyond the corner: Adams, Harper's Indoor Book for Boys.
TEST_CASE("the corner cut follows from the board and covers its edge") {
    auto c = conditions(a4());
    CHECK(figure_text(journal::compute(strip_book(), c), "corner-cut", UnitSystem::metric) == "2 mm");
    CHECK(figure_text(journal::compute(strip_book(), c), "corner-cut", UnitSystem::us) == "1/8 in");
    for (const double board : {1.0, 1.5, 2.0, 3.0}) {
        c.board_stock.caliper = Length::mm(board);
        const Length cut = journal::compute(strip_book(), c).figure("corner-cut")->length.exact;
        CHECK(cut >= Length::mm(1.5 * board));
        CHECK(cut <= Length::mm(2 * board));
    }
}

TEST_CASE("the middle eyelet takes four strands of elastic") {
    // Twice through the middle station for each of two signatures; four circles in a square lie in one of 1 + sqrt 2.
    const journal::Measures m = journal::compute(strip_book(), conditions(a4()));
    CHECK(m.named_length("strands-width").in_mm() == Approx(1 + std::numbers::sqrt2).margin(0.0001));
    CHECK(m.sewing->rows == 1);
    CHECK(m.sewing->path == Length::mm(2 * 136));
    const auto thick = with_length(strip_book(), "elastic-thickness", Length::mm(1.5));
    CHECK(failed(journal::compute(thick, conditions(a4()))) == Rules{"holes-take-elastic"});
    // A bare hole is pierced as wide as it has to be, and has no flange.
    CHECK(journal::compute(with_choice(thick, "eyelet", "bare-holes"), conditions(a4())).findings.empty());
    CHECK(m.named_length("hole-width") == Length::mm(5));
    CHECK(journal::compute(with_choice(strip_book(), "eyelet", "bare-holes"), conditions(a4())).named_length("hole-width") == Length::mm(3));
}

TEST_CASE("choices of the soft-spine change what is taken and nothing that is cut") {
    const journal::Measures before = journal::compute(strip_book(), conditions(a4()));
    auto chosen = with_choice(strip_book(), "closing-band", "none");
    chosen = with_choice(chosen, "sewing-elastic", "waxed-twine");
    chosen = with_choice(chosen, "hinge-tape", "paper-strip");
    const journal::Measures m = journal::compute(chosen, conditions(a4()));
    CHECK_FALSE(m.length("closing-band"));
    CHECK(m.length("sewing-elastic")->of->material == "waxed-twine");
    CHECK(m.piece("hinge-tape")->of->material == "paper-strip");
    for (const journal::Piece& piece : before.pieces) CHECK(m.piece(piece.of->name)->text(UnitSystem::metric) == piece.text(UnitSystem::metric));
}

TEST_CASE("the spine has room for so many filled pockets, and says how much wider it should be") {
    auto c = conditions(a4());
    // 15 mm less 24 leaves of 0.12 mm and two elastics: 10.12 mm, at 1.5 mm each
    CHECK(figure_text(journal::compute(strip_book(), c), "pockets-room", UnitSystem::metric) == "6");
    c.glued_in = Length::mm(6);
    CHECK(figure_text(journal::compute(strip_book(), c), "pockets-room", UnitSystem::metric) == "2");
    CHECK(journal::compute(strip_book(), c).findings.empty());
    c.glued_in = Length::mm(12);
    const journal::Measures full = journal::compute(strip_book(), c);
    CHECK(failed(full) == Rules{"spine-fill"});
    CHECK_THAT(full.findings.at(0).mend, Contains("1.88 mm wider"));
}

TEST_CASE("a hinge opens with the thinner of board and spine strip") {
    auto c = conditions(a4());
    c.board_stock.caliper = Length::mm(2);
    CHECK(failed(journal::compute(strip_book(), c)).empty());
    c.spine_stock.caliper = Length::mm(1.5);
    const journal::Measures m = journal::compute(strip_book(), c);
    CHECK(failed(m) == Rules{"hinge-closes"});
    CHECK(m.findings.at(0).limit == "1.5 mm");
}

TEST_CASE("printed board asks for a heavier cover paper, heavy paper for a score line") {
    auto c = conditions(a4());
    c.board_stock.printed = true;
    CHECK(failed(journal::compute(strip_book(), c)) == Rules{"board-shows-through"});
    c.cover_stock.grammage = 120;
    CHECK(journal::compute(strip_book(), c).findings.empty());
    c.cover_stock.grammage = 169;
    CHECK(journal::compute(strip_book(), c).findings.empty());
    c.cover_stock.grammage = 170;
    const journal::Measures m = journal::compute(strip_book(), c);
    CHECK(failed(m) == Rules{"fold-scored"});
    CHECK(m.findings.at(0).level == Level::note);
}

TEST_CASE("the journal says where published rules differ") {
    for (const kit::NamedLength& length : strip_book().lengths)
        if (length.name == "station-inset") CHECK_THAT(length.published, Contains("3/4 in"));  // Diehl, Bookbinding
    for (const kit::NamedLength& length : real_journal("wrapped-booklet").lengths)
        if (length.name == "station-inset") CHECK_THAT(length.published, Contains("7 in"));    // book-repair.com
}
