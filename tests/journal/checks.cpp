// SPDX-License-Identifier: GPL-3.0-or-later
// A template's own checks: before rounding, and again with the sizes that are shown.
#include "journal/example.h"

using namespace qw;
using namespace qw::example;

namespace {

/// A board that is `extra` wider than the page, to be cut from a piece that is `room` wide.
Findings found(Length extra_metric, Length extra_us, Length room, const Paper& paper, const std::string& level = "error") {
    Template t;
    t.length("extra", extra_metric, extra_us).length("room", room, room);
    t.value("board-width", "page_width + extra").piece("board", "1", "board_width", "page_height");
    t.check("board-fits", "board_width <= room", "board_width", "room", level);
    return journal::compute(t.made, conditions(paper)).findings;
}

}  // namespace

TEST_CASE("a check that holds says nothing; one that does not becomes a finding with what was measured") {
    CHECK(found(Length::mm(3), Length::inches(0.125), Length::mm(160), a4()).empty());
    const Findings f = found(Length::mm(3), Length::inches(0.125), Length::mm(150), a4());
    REQUIRE(f.size() == 1);
    CHECK(f[0].rule == "journal-board-fits");
    CHECK(f[0].level == Level::error);
    CHECK(f[0].measured == "151.5 mm");
    CHECK(f[0].limit == "150 mm");
    CHECK(f[0].message == "It has 151.5 mm of 150 mm, 1.5 mm apart.");
    CHECK(f[0].mend == "Do otherwise.");
    CHECK(found(Length::mm(3), Length::inches(0.125), Length::mm(150), a4(), "note").at(0).level == Level::note);
}

TEST_CASE("on an inch paper findings are in inches") {
    const Findings f = found(Length::mm(3), Length::inches(0.25), Length::inches(5.625), letter());
    REQUIRE(f.size() == 1);
    CHECK(f[0].measured == "5 3/4 in");
    CHECK(f[0].limit == "5 5/8 in");
    CHECK(f[0].message == "It has 5 3/4 in of 5 5/8 in, 1/8 in apart.");
}

TEST_CASE("a size that only rounding makes too large is found") {
    // 151.7 mm fits in 151.8 mm, but is cut as 152 mm; with an inch ruler 5 15/16 in is 150.8 mm.
    const Findings f = found(Length::mm(3.2), Length::inches(0.0625), Length::mm(151.8), a4());
    REQUIRE(f.size() == 1);
    CHECK(f[0].level == Level::error);
    CHECK(f[0].measured == "152 mm");
    CHECK(f[0].limit == "151.8 mm");
    CHECK_THAT(f[0].message, Catch::Matchers::EndsWith(" (after rounding)"));
}

TEST_CASE("what fails only with the other ruler is told, but does not stop the kit") {
    // Letter: 5 1/2 + 1/8 = 5 5/8 in fits exactly; 139.7 + 3 = 142.7 mm does as well, but is cut as 143 mm.
    const Findings f = found(Length::mm(3), Length::inches(0.125), Length::inches(5.625), letter());
    REQUIRE(f.size() == 1);
    CHECK(f[0].level == Level::warning);
    CHECK(f[0].measured == "143 mm");
    CHECK_THAT(f[0].message, Catch::Matchers::EndsWith(" (measured with a metric ruler)"));
}

TEST_CASE("a size that just fits, fits") {
    // 0.1 in has no exact sum in binary: 5.5 + 0.1 + 0.1 in against 5.7 in.
    Template t;
    t.length("tenth", Length::inches(0.1), Length::inches(0.1)).length("room", Length::inches(5.7), Length::inches(5.7));
    t.check("fits", "page_width + tenth + tenth <= room", "page_width", "room");
    CHECK(journal::compute(t.made, conditions(letter())).findings.empty());
}

TEST_CASE("two lengths that the inch ruler shows alike are told apart in hundredths of a millimetre") {
    const Findings f = found(Length::mm(3), Length::inches(0.127), Length::inches(5.625), letter());
    REQUIRE(f.size() == 1);
    CHECK(f[0].measured == "142.93 mm");
    CHECK(f[0].limit == "142.88 mm");
}

TEST_CASE("numbers are shown as numbers") {
    Template t;
    t.number("most", 9).check("few", "sheets / 2 <= most", "sheets / 2", "most").check("bare", "0");
    auto c = conditions(a4());
    c.sheets = 21;
    const Findings f = journal::compute(t.made, c).findings;
    REQUIRE(f.size() == 2);
    CHECK(f[0].measured == "10.5");
    CHECK(f[0].limit == "9");
    CHECK(f[0].message == "It has 10.5 of 9, 1.5 apart.");
    CHECK(f[1].measured.empty());
    CHECK(f[1].limit.empty());
}

TEST_CASE("what follows from a rounded size is computed again") {
    // The board is cut at 151.5 mm, and what stands out beyond the page is what is left then: 3 mm, not 2.6 mm.
    Template t;
    t.length("extra", Length::mm(2.6), Length::inches(0.125)).length("wanted", Length::mm(2.8), Length::inches(0.01));
    t.value("board-width", "page_width + extra").value("square", "board_width - page_width");
    t.piece("board", "1", "board_width", "page_height").check("square", "square < wanted", "square", "wanted");
    const Findings f = journal::compute(t.made, conditions(a4())).findings;
    REQUIRE(f.size() == 1);
    CHECK(f[0].measured == "3 mm");
}

TEST_CASE("a slip in the braces of a message is refused, not printed") {
    Template t;
    t.check("told", "1", "page_width", "page_width");
    t.made.checks.back().message = "It has {mesured}.";
    const auto notes = refused(t, conditions(a4()));
    CHECK(notes.at(0).code == "unknown-hole");
    CHECK(notes.at(0).what.find("{mesured}") != std::string::npos);
}
