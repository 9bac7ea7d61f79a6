// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "compose/collisions.h"
#include "compose/document_json.h"
#include "compose/fractions.h"
#include "compose/guide_drawing.h"
#include "compose/guide_sheet.h"
#include "compose/guide_things.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

// The book, tools and cautions here are invented.
namespace guide_tests {

kit::Formula formula(const std::string& text) { return {"", text, {"pipeline/journals/leaflet.yaml", 1, 1}}; }

template <typename Thing>
Thing named(const std::string& name, const std::string& title) {
    Thing thing;
    thing.name = name;
    thing.title = title;
    thing.count = formula("1");
    return thing;
}

kit::PieceTemplate piece(const std::string& name, const std::string& title, const std::string& width, const std::string& height) {
    auto made = named<kit::PieceTemplate>(name, title);
    made.width = formula(width);
    made.height = formula(height);
    made.stock = "board";
    made.grain = "height";
    return made;
}

kit::StepTemplate step(int line, const std::string& title, const std::string& text, std::vector<std::string> uses = {},
                       std::vector<std::string> tools = {}, const std::string& drawing = "") {
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
        kit::Pipeline p;
        for (const auto& file : std::filesystem::directory_iterator(Path(QW_SOURCE_DIR) / "pipeline/texts")) {
            std::ifstream in(file.path());
            std::ostringstream text;
            text << in.rdbuf();
            p.texts[file.path().filename().string()] = text.str();
        }
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

const Paper& paper_named(const std::string& short_name) {
    static const std::vector<Paper> papers{{"na_letter_8.5x11in", "letter", "Letter", {8.5_in, 11_in}, UnitSystem::us},
                                           {"iso_a4_210x297mm", "a4", "A4", {210_mm, 297_mm}, UnitSystem::metric},
                                           {"iso_a5_148x210mm", "a5", "A5", {148_mm, 210_mm}, UnitSystem::metric},
                                           {"na_5x7_5x7in", "5x7", "5 x 7 in", {5_in, 7_in}, UnitSystem::us}};
    return *std::find_if(papers.begin(), papers.end(), [&](const Paper& p) { return p.short_name == short_name; });
}

const std::vector<std::string> all_papers{"letter", "a4", "a5", "5x7"};

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

/// A guide, with what it was made from; made in place, because its columns point into its journal.
struct Made {
    kit::JournalTemplate journal;
    kit::Manifest manifest;
    std::vector<SizeColumn> columns;
    Document document;

    Made(kit::JournalTemplate of, const std::string& paper, const kit::Pipeline& pipeline = workshop(), int sheets = 19,
         std::vector<Print> prints = {Print::borderless, Print::bordered})
        : journal(std::move(of)) {
        manifest = test::sample_manifest("leaflet");
        manifest.prints = prints;
        for (const Print print : prints) columns.push_back({"100 %", 100, print, measured(journal, paper_named(paper), print, sheets)});
        compose(paper, pipeline);
    }
    Made(const Made&) = delete;

    void compose(const std::string& paper, const kit::Pipeline& pipeline = workshop()) {
        document = guide_sheet({manifest, pipeline, paper_named(paper), test::fonts(), Date{2026, 9, 1}}, columns);
    }
};

std::vector<std::string> plain_texts(const Document& document) {
    std::vector<std::string> plain;
    for (const std::string& text : test::texts_of(document)) plain.push_back(plain_fractions(text));
    return plain;
}

/// All that is written, as one running text.
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

/// The page on which a line stands; -1 if none.
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

TEST_CASE("a step of the guide says its measures in both rulers, the paper's own at least 12 pt") {
    const Made metric(leaflet(), "a4"), us(leaflet(), "letter");
    // A4 folded: 148.5 × 210 mm, 133.5 × 189 mm at 0.9; the board is 3 mm wider and 6 mm higher.
    for (const std::string own : {"151.5 x 216 mm", "137 x 195 mm", "20 x 160 mm", "40 · 105 · 170 mm", "43 · 108 · 173 mm", "630 mm", "4 mm"})
        CHECK(size_of_text(metric.document, own) >= 12_pt);
    // Letter folded: 5 1/2 × 8 1/2 in.
    for (const std::string own : {"5 5/8 x 8 3/4 in", "3/4 x 6 in", "1 1/2 · 4 1/4 · 7 in", "25 1/2 in", "3/16 in"})
        CHECK(size_of_text(us.document, own) >= 12_pt);
    for (const std::string other : {"3/4 x 6 in", "3/16 in"}) CHECK(size_of_text(metric.document, other) == 9_pt);
    CHECK(size_of_text(us.document, "20 x 160 mm") == 9_pt);
    CHECK(size_of_text(us.document, "5") >= 12_pt);  // sheets in each, 19 in 4
}

TEST_CASE("the guide tells prints apart where they differ, and nowhere else") {
    const std::string both = running(Made(leaflet(), "a4").document);
    CHECK(said(both, "2 x Board borderless 151.5 x 216 mm"));
    CHECK(said(both, "bordered 137 x 195 mm"));
    CHECK(said(both, "1 x Back strip 20 x 160 mm 3/4 x 6 in"));
    CHECK(said(both, "Where borderless and bordered prints come out different, both are given."));
    const std::string one = running(Made(leaflet(), "a4", workshop(), 19, {Print::borderless}).document);
    CHECK(said(one, "2 x Board 151.5 x 216 mm"));
    CHECK(!said(one, "both are given"));
}

TEST_CASE("lengths in the guide's sentences stand in both rulers, the paper's own first; printed ones shrink with the pages") {
    const std::string metric = running(Made(leaflet(), "a4").document);
    CHECK(said(metric, "Leave 3 mm (1/8 in) free"));
    CHECK(said(metric, "mark 40 mm (1 1/2 in) borderless and 36 mm (1 3/8 in) bordered down"));
    CHECK(said(metric, "Score from 160 g/m"));
    const std::string us = running(Made(leaflet(), "letter", workshop(), 19, {Print::bordered}).document);
    CHECK(said(us, "Leave 1/8 in (3 mm) free and mark 1 3/8 in (36 mm) down."));
}

TEST_CASE("a step's text follows what the kit chose") {
    CHECK(said(running(Made(leaflet(), "a4").document), "Set them."));
    kit::JournalTemplate bare = leaflet();
    bare.items.clear();
    bare.replaced = {"ring"};
    const std::string without = running(Made(bare, "a4").document);
    CHECK(said(without, "Leave the holes."));
    CHECK(!said(without, "Set them."));
    CHECK(!said(without, "3 x Ring"));
}

TEST_CASE("everything that steps name and nobody knows is told at once, each at its step") {
    kit::JournalTemplate wrong = leaflet();
    wrong.steps[0].text = "Leave {{egde}} free.";
    wrong.steps[2].text = "{{#has-screw}}Turn it.{{/has-screw}}";
    wrong.steps[3].uses = {"thread", "ribbon"};
    try {
        Made made(wrong, "a4");
        FAIL("nothing was refused");
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        std::vector<int> lines;
        for (const FaultNote& note : fault.notes()) {
            CHECK(note.where.file == "pipeline/journals/leaflet.yaml");
            lines.push_back(note.where.line);
        }
        CHECK(lines == std::vector<int>{101, 121, 131});
        CHECK(fault.notes()[0].what.find("egde") != std::string::npos);
        CHECK(fault.notes()[0].mend == "write 'edge'");
    }
    wrong = leaflet();
    wrong.steps[1].tools = {"spkie"};
    try {
        Made made(wrong, "a4");
        FAIL("nothing was refused");
    } catch (const Fault& fault) {
        CHECK(fault.notes()[0].code == "unknown-tool");
        CHECK(fault.notes()[0].where.line == 111);
        CHECK(fault.notes()[0].mend == "write 'spike'");
    }
}

TEST_CASE("a caution stands whole where it applies first, and later steps say where that is") {
    kit::JournalTemplate journal = leaflet();
    journal.tools = {"saw"};  // needed, but in no step
    const Document document = Made(journal, "a4").document;
    const std::string all = running(document);
    for (const kit::Caution& caution : workshop().cautions) {
        CAPTURE(caution.text);
        CHECK(times(all, caution.text) == 1);
    }
    const auto before = [&](const std::string& a, const std::string& b) { return all.find(a) < all.find(b); };
    // What always holds, or belongs to no step, comes before the steps; the title "Cut them" stands in the list of steps, too.
    const std::string first_step = "Leave 3 mm";
    CHECK(before("Read the labels before all else.", first_step));
    CHECK(before("Cover your ears at the saw.", first_step));
    CHECK(before(first_step, "Cut away from yourself, always."));
    CHECK(before("Wipe the oil off the card.", "One paragraph."));      // of what may stand in for the strip
    CHECK(before("One paragraph.", "Pierce onto felt, never into air."));
    CHECK(before("Set them.", "Mind the lever of the press."));          // of a tool that only rings need
    CHECK(before("Sew.", "Keep bands from small children."));            // of a material
    CHECK(times(all, "Take care as in steps 1 and 2") == 1);             // rings: blade; holes left plain: spike
    CHECK(times(all, "Take care as in step 2") == 1);                    // sewing: spike
    CHECK(times(all, "Take care as in step 1") == 2);                    // the strip's card again; the blade again
}

TEST_CASE("cautions are set apart by a bar") {
    const Document document = Made(leaflet(), "a4").document;
    for (const Page& page : document.pages)
        for (const Item& item : page.items) {
            const auto* text = std::get_if<Text>(&item);
            if (!text || (text->words != "Take care" && !text->words.starts_with("Take care as in"))) continue;
            const bool barred = std::any_of(page.items.begin(), page.items.end(), [&](const Item& other) {
                const auto* outline = std::get_if<Outline>(&other);
                if (!outline || !outline->fill || *outline->fill != 0) return false;
                Page alone;
                alone.items = {other};
                const auto bar = ink_box(alone, test::fonts());
                return bar->right < text->at.x && text->at.x - bar->right < 5_mm && bar->bottom < text->at.y && text->at.y < bar->top;
            });
            CHECK(barred);
        }
}

TEST_CASE("the guide tells what may be left out, what may stand in, and the grain") {
    const std::string all = running(Made(leaflet(), "a4").document);
    CHECK(said(all, "grain along its height"));
    CHECK(said(all, "or card, thin: folded three times"));
    CHECK(said(all, "or plain holes (tools: spike): left as they are"));
    CHECK(times(all, "may be left out") == 1);
    CHECK(said(all, "Tools: blade with a handle and lever press"));
    kit::JournalTemplate either = leaflet();
    either.pieces[0].grain = "any";
    CHECK(said(running(Made(either, "a4").document), "grain either way"));
}

TEST_CASE("sheets are told by signatures, even and uneven") {
    using Groups = std::vector<std::pair<int, int>>;
    CHECK(signature_groups(12, 2) == Groups{{2, 6}});
    CHECK(signature_groups(19, 4) == Groups{{3, 5}, {1, 4}});
    CHECK(signature_groups(7, 1) == Groups{{1, 7}});
    CHECK(signature_groups(2, 3) == Groups{{2, 1}});
    for (int sheets = 0; sheets < 60; ++sheets)
        for (int signatures = 1; signatures < 13; ++signatures) {
            int total = 0, most = 0, least = 1000;
            for (const auto& [count, each] : signature_groups(sheets, signatures)) total += count * each, most = std::max(most, each), least = std::min(least, each);
            CHECK(total == sheets);
            CHECK(most - least <= 1);
        }
    CHECK(said(running(Made(leaflet(), "a4", workshop(), 19).document), "19 sheets in 4 signatures: 3 of 5 and 1 of 4"));
    CHECK(said(running(Made(leaflet(), "a4", workshop(), 12).document), "12 sheets in 4 signatures of 3"));
    kit::JournalTemplate one = leaflet();
    one.sewing->signatures = formula("1");
    CHECK(said(running(Made(one, "a4", workshop(), 12).document), "12 sheets in 1 signature "));
    kit::JournalTemplate unsewn = leaflet();
    unsewn.sewing.reset();
    unsewn.steps[3].drawing.clear();
    CHECK(!said(running(Made(unsewn, "a4", workshop(), 12).document), "signature"));
}

TEST_CASE("the guide begins with what is made") {
    const Made made(leaflet(), "a4");
    Document first;
    first.pages = {made.document.pages.at(0)};
    const std::string all = running(first);
    for (const std::string words : {"Stitched leaflet", "Front cover borderless 151.5 x 216 mm", "Book page borderless 148.5 x 210 mm", "Large figures are for a metric ruler",
                                    "prints at 100 %", "1 Cut them 2 Pierce them 3 Set the rings 4 Sew"})
        CHECK(said(all, words));
    kit::JournalTemplate soft = leaflet();
    soft.picture = "soft-cover";
    soft.pieces[0].name = "soft-cover";
    soft.pieces[0].stock = "cover";
    soft.steps[0].uses = {"soft-cover"};
    CHECK(said(running(Made(soft, "a4").document), "Cover, opened flat borderless 151.5 x 216 mm"));
}

TEST_CASE("a print whose checks fail has no figures in the guide but a reason") {
    Made made(leaflet(), "a4");
    made.columns[1].measures.findings.push_back({"journal-strip", Level::error, "", 0, 0, "", "", "The strip breaks at 1/16 in.", "Print larger."});
    made.compose("a4");
    const std::string all = running(made.document);
    CHECK(said(all, "Printed bordered: The strip breaks at 1/16 in. Print larger."));
    CHECK(said(all, "2 x Board borderless 151.5 x 216 mm"));
    CHECK(said(all, "bordered – "));
    CHECK(!said(all, "137 x 195 mm"));
    CHECK(!said(all, "36 mm"));
    CHECK(said(all, "mark 40 mm (1 1/2 in) down"));
}

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
    for (const std::string& paper : all_papers) {
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
    for (const std::string& paper : all_papers) {
        const Made made(leaflet(), paper);
        const SheetContext context{made.manifest, workshop(), paper_named(paper), test::fonts(), {}};
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
    CHECK(!has_step_drawing({made.manifest, workshop(), paper_named("letter"), test::fonts(), {}}, "corner", made.columns[0].measures));
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
    for (const std::string& paper : all_papers) {
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
        for (const std::string& paper : all_papers) {
            CAPTURE(name, paper);
            const Document document = Made(journal, paper, test::pipeline(), 8).document;
            check_placed(document);
            const std::string all = running(document);
            for (const kit::StepTemplate& one : journal.steps) CHECK(said(all, one.title));
            for (const kit::Caution& caution : test::pipeline().cautions) CHECK(times(all, plain_fractions(caution.text)) <= 1);
            CHECK(document.pages.size() <= (paper_named(paper).size.width > 200_mm ? 12u : 30u));
        }
}

}  // namespace guide_tests
