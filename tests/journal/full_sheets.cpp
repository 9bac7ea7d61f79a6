// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/full_sheets.h"

#include "journal/real_journal.h"

#include <algorithm>

using namespace qw;
using namespace qw::example;

namespace {

journal::Measures measured(const std::string& name, const Paper& paper, double scale, int full_sheets) {
    journal::Conditions c = conditions(paper, scale);
    c.cover_sheet = paper.size.as_portrait();  // printed at full size
    c.full_sheets = full_sheets;
    if (name == "wrapped-booklet") c.sheets = 4;
    return journal::compute(real_journal(name), c);
}

bool has_note(const journal::Measures& m) {
    return std::any_of(m.findings.begin(), m.findings.end(), [](const Finding& f) { return f.rule == "full-sheets-enough"; });
}

}  // namespace

TEST_CASE("full sheets are counted from the pieces that are cut from them") {
    // As the journals' first steps say: two for covers and one for both liners; two for covers; two for covers and two for
    // liners; two for panels; one round the pages.
    const std::vector<std::pair<std::string, int>> wanted{{"soft-spine", 3}, {"case-binding", 2}, {"concertina", 4}, {"long-stitch", 2}, {"wrapped-booklet", 1}};
    for (const Paper& paper : {a4(), letter()})
        for (const auto& [name, count] : wanted) {
            CAPTURE(name, paper.title);
            const auto sheets = journal::full_sheets(measured(name, paper, 1, 5));
            REQUIRE(sheets);
            CHECK(sheets->needed == count);
            CHECK(sheets->in_kit == 5);
            CHECK(sheets->exact);
        }
}

TEST_CASE("smaller pages take fewer full sheets of full size, and never more") {
    for (const std::string name : {"soft-spine", "case-binding", "concertina", "long-stitch"}) {
        int before = 0;
        for (const double scale : {0.3, 0.4, 0.5, 0.6, 0.8, 1.0}) {
            CAPTURE(name, scale);
            const auto sheets = journal::full_sheets(measured(name, a4(), scale, 5));
            REQUIRE(sheets);
            CHECK(sheets->needed >= before);
            before = sheets->needed;
        }
    }
    // At half size two covers of 109 mm or less lie on a sheet of 210 x 297 mm.
    CHECK(journal::full_sheets(measured("case-binding", a4(), 0.5, 5))->needed == 1);
}

TEST_CASE("a kit with fewer full sheets than the journal needs is told with what to do") {
    const auto m = measured("soft-spine", a4(), 1, 2);
    REQUIRE(has_note(m));
    const auto note = journal::too_few_full_sheets(m);
    REQUIRE(note);
    CHECK(note->level == Level::note);
    CHECK(note->measured == "3 full sheets");
    CHECK(note->limit == "2 full sheets");
    CHECK(note->message == "The journal is cut from 3 full sheets, and the kit has 2 different ones.");
    CHECK(note->mend == "Print one of them twice.");
    CHECK_FALSE(has_note(measured("soft-spine", a4(), 1, 3)));
    CHECK_FALSE(has_note(measured("soft-spine", a4(), 0.3, 2)));
}

TEST_CASE("how sheets are printed again") {
    CHECK(journal::print_again({3, 5, true}) == "");
    CHECK(journal::print_again({3, 3, true}) == "");
    CHECK(journal::print_again({2, 1, true}) == "print it twice");
    CHECK(journal::print_again({3, 1, true}) == "print it 3 times");
    CHECK(journal::print_again({4, 3, true}) == "print one of them twice");
    CHECK(journal::print_again({5, 3, true}) == "print 2 of them twice");
    CHECK(journal::print_again({4, 2, true}) == "print each of them twice");
    CHECK(journal::print_again({5, 2, true}) == "print them more than once, 5 in all");
}

TEST_CASE("no number where none can be told") {
    CHECK_FALSE(journal::full_sheets(measured("soft-spine", a4(), 1, 0)));
    auto m = measured("soft-spine", a4(), 1, 5);
    m.conditions.cover_sheet = m.conditions.cover_sheet * 0.5;  // no piece fits on it: the template's check tells
    CHECK_FALSE(journal::full_sheets(m));
    m = measured("soft-spine", a4(), 1, 5);
    std::erase_if(m.pieces, [](const journal::Piece& p) { return p.of->stock == "cover"; });
    CHECK_FALSE(journal::full_sheets(m));
}
