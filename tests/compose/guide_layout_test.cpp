// SPDX-License-Identifier: GPL-3.0-or-later
// Where what a guide says stands, and that it is all there on any paper.
#include "compose/guide_samples.h"

#include "compose/document_json.h"
#include "compose/fractions.h"
#include "compose/guide_drawing.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace guide_tests {

using namespace qw::literals;

TEST_CASE("a step stands on one page with its figures, its cautions and its drawing") {
    kit::JournalTemplate journal = leaflet();
    journal.steps.clear();
    std::string text;
    for (int i = 0; i < 12; ++i) text += "words that fill up lines ";
    for (int i = 0; i < 12; ++i) {
        const std::string number = std::to_string(i);
        auto figure = kit::FigureTemplate{};
        figure.name = "figure-" + number;
        figure.title = "Figure " + number;
        figure.value = formula(std::to_string(700 + i));
        figure.number = true;
        journal.figures.push_back(figure);
        journal.steps.push_back(step(i, "Step with figure " + number, text + "end" + number + ".", {"board", figure.name}, {}, i % 2 ? "corner" : "cover"));
    }
    for (const std::string paper : {"letter", "a4"}) {
        const Document document = Made(journal, paper).document;
        check_placed(document);
        std::vector<int> pages;
        for (int i = 0; i < 12; ++i) {
            const int page = page_of(document, "Step with figure " + std::to_string(i));
            CAPTURE(paper, i, page);
            CHECK(page > 0);
            CHECK(page_of(document, std::to_string(700 + i)) == page);
            Document alone;
            alone.pages = {document.pages.at(static_cast<std::size_t>(page))};
            const std::string all = running(alone);
            CHECK(said(all, "end" + std::to_string(i) + "."));
            pages.push_back(page);
        }
        CHECK(std::is_sorted(pages.begin(), pages.end()));
        // Each step has its drawing, and stands with it.
        std::vector<int> drawings(document.pages.size()), steps(document.pages.size());
        for (std::size_t i = 0; i < document.pages.size(); ++i) {
            Document alone;
            alone.pages = {document.pages[i]};
            drawings[i] = times(running(alone), "Drawn at ");
        }
        for (const int page : pages) ++steps[static_cast<std::size_t>(page)];
        CHECK(drawings == steps);
        CHECK(*std::max_element(steps.begin(), steps.end()) > 1);
    }
}

TEST_CASE("a step that is longer than a page goes on, and the page says which step it is", "[many]") {
    kit::JournalTemplate journal = leaflet();
    for (int i = 0; i < 700; ++i) journal.steps[1].text += " words that fill up lines";
    for (const Paper& sized : test::sheet_papers()) {
        const std::string& paper = sized.short_name;
        const Document document = Made(journal, paper).document;
        CAPTURE(paper);
        check_placed(document);
        CHECK(page_of(document, "Step 2, continued") > page_of(document, "Pierce them"));
        const std::string all = running(document);
        CHECK(times(all, "words that fill up lines") > 600);
        CHECK(said(all, "Tools: spike"));
    }
}

TEST_CASE("drawings stand in their steps") {
    for (const std::string paper : {"letter", "a4"}) {
        const Document document = Made(leaflet(), paper).document;
        CAPTURE(paper);
        check_placed(document);
        const std::string all = running(document);
        CHECK(times(all, "Drawn at ") == 3);  // stations, cover, corner; the stitch has no scale
        CHECK(said(all, "The drawing has the figures of the borderless print."));
    }
    kit::JournalTemplate without = leaflet();
    for (kit::StepTemplate& one : without.steps) one.drawing.clear();
    CHECK(times(running(Made(without, "a4").document), "Drawn at ") == 0);
}

TEST_CASE("a drawing for which a paper has no room is not left out in silence") {
    for (const Paper& sized : test::sheet_papers()) {
        const std::string& paper = sized.short_name;
        const Made made(leaflet(), paper);
        const SheetContext context{made.manifest, workshop(), test::paper(paper), test::fonts(), {}};
        int asked = 0;
        for (const kit::StepTemplate& one : made.journal.steps) {
            if (one.drawing.empty() || one.drawing == "stitch") continue;  // the stitch is drawn to no scale
            ++asked;
            CHECK(has_step_drawing(context, one.drawing, made.columns[0].measures));
        }
        const std::string all = running(made.document);
        const int drawn = times(all, "Drawn at ");
        CAPTURE(paper);
        CHECK(drawn + times(all, "The drawing is left out: this paper has no room for it.") == asked);
    }
    // Without a turn-in there is no corner to be cut: nothing is missing.
    kit::JournalTemplate straight = leaflet();
    std::erase_if(straight.lengths, [](const kit::NamedLength& length) { return length.name == "corner-cut"; });
    const Made made(straight, "letter");
    CHECK(!has_step_drawing({made.manifest, workshop(), test::paper("letter"), test::fonts(), {}}, "corner", made.columns[0].measures));
    CHECK(!said(running(made.document), "The drawing is left out"));
}

TEST_CASE("nothing in a guide collides or overflows on any paper, however long its words are", "[many]") {
    kit::JournalTemplate journal = leaflet();
    for (kit::StepTemplate& one : journal.steps) {
        one.title += " and do it with more patience than the title of a step has room for on one line";
        for (int i = 0; i < 40; ++i) one.text += " Take {{strip}} of it, fold it over {{edge}} and press.";
        one.uses = {"board", "spine", "page-stations", "thread", "band", "ring", "each"};
        one.tools = {"blade", "spike", "press", "saw"};
    }
    journal.pieces[0].title = "Board for the front cover and for the back cover, one of each";
    journal.pieces[1].instead[0].use = "folded three times, glued, pressed until dry, and only then cut to the figures that stand here";
    journal.title = "Stitched leaflet with a title that goes on for longer than anyone would like it to";
    kit::Pipeline talkative = workshop();
    for (kit::Caution& caution : talkative.cautions) caution.text += " " + caution.text + " " + caution.text;
    for (const Paper& sized : test::sheet_papers()) {
        const std::string& paper = sized.short_name;
        CAPTURE(paper);
        Made long_winded(journal, paper, talkative), usual(leaflet(), paper);
        check_placed(usual.document);
        check_placed(long_winded.document);
        for (Made* made : {&usual, &long_winded}) {
            made->manifest.title = "A kit whose title is long enough to stand below the title of every page";
            made->compose(paper, talkative);
            check_placed(made->document);
        }
    }
}

TEST_CASE("the same values give the same guide") {
    CHECK(to_json(Made(leaflet(), "letter").document) == to_json(Made(leaflet(), "letter").document));
}

TEST_CASE("the guide of every journal of the project is whole on every paper", "[many]") {
    REQUIRE(!test::pipeline().journals.empty());
    for (const auto& [name, journal] : test::pipeline().journals)
        for (const Paper& sized : test::sheet_papers()) {
        const std::string& paper = sized.short_name;
            CAPTURE(name, paper);
            const Document document = Made(journal, paper, test::pipeline(), 8).document;
            check_placed(document);
            const std::string all = running(document);
            for (const kit::StepTemplate& one : journal.steps) CHECK(said(all, one.title));
            for (const kit::Caution& caution : test::pipeline().cautions) CHECK(times(all, plain_fractions(caution.text)) <= 1);
            CHECK(document.pages.size() <= (test::paper(paper).size.width > 200_mm ? 12u : 30u));
        }
}

}  // namespace guide_tests
