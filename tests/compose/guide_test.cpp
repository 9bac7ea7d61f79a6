// SPDX-License-Identifier: GPL-3.0-or-later
// What a guide says.
#include "compose/guide_samples.h"

#include "base/fault.h"
#include "compose/fractions.h"
#include "compose/guide_drawing.h"
#include "compose/guide_things.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace guide_tests {

using namespace qw::literals;

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

TEST_CASE("a step that is off leaves no word, thing, tool, caution or drawing in the guide") {
    kit::JournalTemplate journal = leaflet();
    journal.steps.insert(journal.steps.begin() + 3, step(126, "Oil the joints", "Oil them {{edge}} wide.", {"each"}, {"saw"}, "cover"));
    journal.steps[5].drawing.clear();
    journal.steps[3].when = formula("has_ring");
    const std::string on = running(Made(journal, "a4").document);
    for (const char* words : {"4 Oil the joints", "Oil them 3 mm (1/8 in) wide", "Cover your ears", "Drawn at"}) CHECK(said(on, words));
    journal.steps[3].when = formula("has_ring == 0");
    const std::string off = running(Made(journal, "a4").document);
    for (const char* words : {"Oil", "Saw", "saw", "Cover your ears", "Back strip, width"}) CHECK(!said(off, words));
    CHECK(said(off, "4 Sew"));
    CHECK(said(on, "5 Sew"));
    const auto chosen = kit::chosen(journal, {{"ring", {"plain", {}}}});
    CHECK(said(running(Made(chosen, "a4").document), "Oil them"));
    // One guide serves both prints: a step that one of them needs stands in it. The bordered page is 133.7 mm wide.
    journal.lengths.push_back({"limit", {140_mm, 5.5_in}, false, "invented", "", {}});
    journal.steps[3].when = formula("page_width < limit");
    CHECK(said(running(Made(journal, "a4").document), "4 Oil the joints"));
    CHECK(!said(running(Made(journal, "a4", workshop(), 19, {Print::borderless}).document), "Oil"));
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
    for (const std::string words : {"Stitched leaflet", "Front cover borderless 151.5 x 216 mm", "Book page borderless 148.5 x 210 mm",
                                    "Large figures are for a metric ruler", "prints at 100 %", "1 Cut them 2 Pierce them 3 Set the rings 4 Sew"})
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

}  // namespace guide_tests
