// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_samples.h"

#include "compose/collisions.h"
#include "compose/fractions.h"
#include "compose/guide_drawing.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace guide_tests {

using namespace qw::literals;

kit::Formula formula(const std::string& text) { return {"", text, {"pipeline/journals/leaflet.yaml", 1, 1}}; }

kit::PieceTemplate piece(const std::string& name, const std::string& title, const std::string& width, const std::string& height) {
    auto made = named<kit::PieceTemplate>(name, title);
    made.width = formula(width);
    made.height = formula(height);
    made.stock = "board";
    made.grain = "height";
    return made;
}

kit::StepTemplate step(int line, const std::string& title, const std::string& text, std::vector<std::string> uses,
                       std::vector<std::string> tools, const std::string& drawing) {
    return {title, text, std::move(uses), std::move(tools), drawing, {"pipeline/journals/leaflet.yaml", line, 5}};
}

kit::JournalTemplate leaflet() {
    kit::JournalTemplate j;
    j.name = "leaflet";
    j.title = "Stitched leaflet";
    j.picture = "opened-cover";
    j.file = "pipeline/journals/leaflet.yaml";
    j.bulk = j.creep_least = j.creep_most = formula("sheets * page_caliper");
    j.lengths = {{"edge", {3_mm, 0.125_in}, false, "invented", "", {}},
                 {"inset", {40_mm, 1.5_in}, true, "invented", "", {}},
                 {"strip", {20_mm, 0.75_in}, false, "invented", "", {}},
                 {"turn-in", {15_mm, 0.625_in}, false, "invented", "", {}},
                 {"corner-cut", {2_mm, 0.0625_in}, false, "invented", "", {}}};
    j.numbers = {{"heavy", 160, "invented", "", {}}};
    j.pieces = {piece("board", "Board", "page_width + edge", "page_height + 2 * edge"), piece("spine", "Back strip", "strip", "strip * 8")};
    j.pieces[0].count = formula("2");
    j.pieces[1].instead = {{"folded-card", "", "card", {}, "folded three times"}};
    j.stations.page = {formula("inset"), formula("page_height / 2"), formula("page_height - inset")};
    j.stations.spine = {formula("edge + inset"), formula("edge + page_height / 2"), formula("edge + page_height - inset")};
    j.sewing.emplace();
    j.sewing->path = {2, 1, 3, 2};
    j.sewing->signatures = formula("4");
    j.sewing->rows = formula("1");
    j.sewing->thread = "thread";
    auto thread = named<kit::LengthTemplate>("thread", "Thread");
    thread.length = formula("3 * page_height");
    thread.material = "yarn";
    auto band = named<kit::LengthTemplate>("band", "Band");
    band.length = formula("2 * page_width");
    band.material = "rubber";
    band.optional = true;
    j.cut_lengths = {thread, band};
    auto ring = named<kit::ItemTemplate>("ring", "Ring");
    ring.count = formula("3");
    ring.size = kit::BothLengths{4_mm, 0.1875_in};
    ring.tools = {"press"};
    ring.instead = {{"plain", "Plain holes", "", {"spike"}, "left as they are"}};
    j.items = {ring};
    auto each = kit::FigureTemplate{};
    each.name = "each";
    each.title = "Sheets in each";
    each.value = formula("ceil(sheets / 4)");
    each.number = true;
    each.use = "at most";
    j.figures = {each};
    j.steps = {step(101, "Cut them", "Leave {{edge}} free and mark {{inset}} down. Score from {{heavy}} g/m² on.", {"board", "spine"}, {"blade"}),
               step(111, "Pierce them", "One\nparagraph.\n\nAnother.", {"page", "page-stations", "spine-stations", "each"}, {"spike"}, "stations"),
               step(121, "Set the rings", "{{#has-ring}}Set them.{{/has-ring}}{{^has-ring}}Leave the holes.{{/has-ring}}", {"ring"}, {"blade"}),
               step(131, "Sew", "Sew.", {"thread", "band"}, {"spike"}, "stitch"), step(141, "Join", "Join.", {"spine"}, {}, "cover"),
               step(151, "Turn in", "Turn in.", {}, {"blade"}, "corner")};
    return j;
}

const kit::Pipeline& workshop() {
    static const kit::Pipeline made = [] {
        kit::Pipeline p = test::words_alone();
        p.cautions = {{"first", "Read the labels before all else.", true},    {"sharp", "Cut away from yourself, always.", false},
                      {"pointed", "Pierce onto felt, never into air.", false}, {"heavy", "Mind the lever of the press.", false},
                      {"swallowed", "Keep bands from small children.", false}, {"oily", "Wipe the oil off the card.", false},
                      {"loud", "Cover your ears at the saw.", false}};
        p.tools = {{"blade", "Blade with a handle", "to cut", {"sharp"}}, {"spike", "Spike", "to pierce", {"pointed"}},
                   {"press", "Lever press", "for rings", {"heavy"}}, {"saw", "Saw", "to part boards", {"loud"}}};
        kit::Material card, yarn, rubber;
        card.name = "card", card.title = "Card, thin", card.cautions = {"oily"};
        yarn.name = "yarn", yarn.title = "Yarn";
        rubber.name = "rubber", rubber.title = "Rubber band", rubber.cautions = {"swallowed"};
        p.materials = {card, yarn, rubber};
        return p;
    }();
    return made;
}

journal::Measures measured(const kit::JournalTemplate& journal, const Paper& paper, Print print, int sheets) {
    journal::Conditions c;
    c.paper = paper;
    c.print = print;
    c.scale = print == Print::bordered ? 0.9 : 1;
    const Size sheet = paper.size.as_landscape() * c.scale;
    c.page = {sheet.width / 2, sheet.height};
    c.cover_sheet = paper.size;
    c.sheets = sheets;
    c.full_sheets = 5;
    c.page_stock = {"copy-100", "Copy paper", kit::Stock::Kind::paper, 100, 0.12_mm, "bond", false};
    c.cover_stock = c.page_stock;
    c.board_stock = {"board", "Board", kit::Stock::Kind::board, 630, 1_mm, "", false};
    c.spine_stock = c.board_stock;
    return journal::compute(journal, c);
}

std::vector<std::string> plain_texts(const Document& document) {
    std::vector<std::string> plain;
    for (const std::string& text : test::texts_of(document)) plain.push_back(plain_fractions(text));
    return plain;
}

std::string running(const Document& document) {
    std::string all;
    for (const std::string& text : plain_texts(document)) all += text + " ";
    return all;
}

int times(const std::string& all, const std::string& words) {
    int count = 0;
    for (std::size_t at = all.find(words); at != std::string::npos; at = all.find(words, at + 1)) ++count;
    return count;
}

bool said(const std::string& all, const std::string& words) { return times(all, words) > 0; }

int page_of(const Document& document, const std::string& words) {
    for (std::size_t i = document.pages.size(); i-- > 0;) {
        Document page;
        page.pages = {document.pages[i]};
        const auto texts = plain_texts(page);
        if (std::find(texts.begin(), texts.end(), words) != texts.end()) return static_cast<int>(i);
    }
    return -1;
}

Length size_of_text(const Document& document, const std::string& words) {
    Length largest;
    for (const Page& page : document.pages)
        for (const Item& item : page.items)
            if (const auto* text = std::get_if<Text>(&item); text && plain_fractions(text->words) == words) largest = max(largest, text->size);
    return largest;
}

void check_placed(const Document& document) {
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const Page& page = document.pages[i];
        CAPTURE(i + 1, document.pages.size());
        for (const Collision& c : collisions(page, test::fonts(), SheetMargins::text(page.size))) {
            CAPTURE(c.words, c.other);
            FAIL_CHECK("a text collides");
        }
        const auto ink = ink_box(page, test::fonts());
        REQUIRE(ink);
        CHECK(SheetMargins::text(page.size).holds(*ink, 0.1_mm));
        for (const Item& item : page.items)
            if (const auto* text = std::get_if<Text>(&item)) {
                CAPTURE(text->words);
                CHECK(test::fonts().missing(text->cut, text->words).empty());
                CHECK(text->words.find("{{") == std::string::npos);
            }
    }
}

}  // namespace guide_tests
