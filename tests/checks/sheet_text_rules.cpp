// SPDX-License-Identifier: GPL-3.0-or-later
// Words of generated sheets: figures and letters are those that were planned, the foot names the sheet, the list of
// materials gives its cautions. All texts are invented.
#include "checks/sheet_text_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

Findings text_of(const std::vector<std::string>& planned, const std::string& read) {
    compose::Page page;
    for (const std::string& words : planned) page.items.push_back(compose::Text{{}, words});
    checks::RenderedPage seen;
    seen.page = 2;
    seen.text = read;
    Findings findings;
    checks::check_sheet_text(rules(), page, seen, "a4/guide.pdf", findings);
    return findings;
}

struct Sheet {
    proof::FileFacts facts;
    checks::SeenPdf seen;
    explicit Sheet(const std::string& text, const std::string& role = "materials") {
        facts.title = "Ebb: a Tide Book: Materials";
        facts.subject = "Ebb: a Tide Book 2.1.0, A4";
        facts.pages.resize(1);
        seen.path = "a4/materials.pdf";
        seen.facts = &facts;
        seen.role = role;
        seen.paper = Paper{};
        seen.paper->title = "A4";
        seen.rendered.push_back({});
        seen.rendered.back().page = 1;
        seen.rendered.back().text = text;
    }
    Sheet(const Sheet&) = delete;
    Findings foot() const {
        Findings findings;
        checks::check_sheet_foot(rules(), seen, findings);
        return findings;
    }
    Findings cautions(std::vector<std::string> wanted) {
        seen.cautions = std::move(wanted);
        Findings findings;
        checks::check_sheet_cautions(rules(), seen, findings);
        return findings;
    }
};

}  // namespace

TEST_CASE("words that were planned may be read in any order, with ligatures or raised digits") {
    CHECK(text_of({"Cut the board", "12 \u00b9\u2044\u2082 in"}, "12 1/2 in\nCut the board").empty());
    CHECK(text_of({"a fine fluff"}, "a \ufb01ne \ufb02u\ufb00").empty());
    CHECK(text_of({"Fold", "\u00d7"}, "F o l d x").size() == 1);  // an x that was not planned
}

TEST_CASE("another figure and a lost word are told with their page") {
    const Findings figure = text_of({"153 x 216 mm"}, "153 x 261 mm");
    REQUIRE(figure.size() == 1);
    CHECK(figure.front().page == 2);
    CHECK(figure.front().measured == "reads 261");
    CHECK(figure.front().limit == "planned 216");
    const Findings word = text_of({"Do not cut", "5 mm"}, "Do cut 5 mm");
    REQUIRE(word.size() == 1);
    CHECK(word.front().limit == "missing: 1 x n, 1 x o, 1 x t");
    CHECK(word.front().measured == "too many: none");
}

TEST_CASE("a foot names kit, version, sheet and paper, in any order") {
    CHECK(Sheet("Ebb: a Tide Book 2.1.0  Materials, page 1 of 1\nFor A4 paper").foot().empty());
    CHECK(Sheet("Materials A4 2.1.0 Ebb: A TIDE BOOK").foot().empty());
    for (const char* lacking : {"Ebb: a Tide Book, Materials, A4", "Ebb: a Tide Book 2.1.0 Materials", "Ebb: a Tide Book 2.1.0 A4", "2.1.0 Materials A4"}) {
        INFO(lacking);
        const Findings findings = Sheet(lacking).foot();
        REQUIRE(findings.size() == 1);
        CHECK(findings.front().rule == "sheet-foot");
    }
    CHECK(Sheet("nothing", "journal-page").foot().empty());  // artwork has no foot
    CHECK(Sheet("nothing", "").foot().empty());              // nobody knows what it is
}

TEST_CASE("cautions are read across columns; one that lost a word is missing") {
    const std::string read = "Keep your fingers   Open a window\nbehind the blade.   before you glue.";
    CHECK(Sheet(read).cautions({"Keep your fingers behind the blade.", "Open a window before you glue."}).empty());
    const Findings findings = Sheet(read).cautions({"Keep your own fingers behind the blade."});
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().rule == "sheet-cautions");
    CHECK(Sheet(read, "guide").cautions({"Not here."}).empty());  // the list of materials alone is asked
}
