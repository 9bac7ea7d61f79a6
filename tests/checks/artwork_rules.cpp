// SPDX-License-Identifier: GPL-3.0-or-later
// Each rule with a case that breaks it and one just inside its limit.
#include "checks/artwork_rules.h"

#include "base/unit_system.h"
#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

kit::Set pages() {
    kit::Set set;
    set.name = "journal-pages";
    set.role = kit::Role::journal_page;
    set.drawn_at = Size{303_mm, 221.9_mm};
    return set;
}

Edition a4(Print print) {
    Edition edition{shared_data().papers[1], print, {}};
    for (const Paper& paper : shared_data().papers)
        if (paper.short_name == "a4") edition.paper = paper;
    if (print == Print::bordered) edition.margins = {6.35_mm, 12.7_mm, 6.35_mm, 12.7_mm};
    return edition;
}

/// Artwork of a size, drawn unscaled and centred on landscape A4.
compose::Placement centred(Size drawn) {
    compose::Placement p;
    p.face = 0;
    p.sheet = {297_mm, 210_mm};
    p.picture = Rect::of(p.sheet);
    p.artwork = Rect::centred(drawn, p.picture);
    p.visible = p.artwork.shared_with(p.picture);
    const auto beyond = [](Length a) { return max(a, Length()); };
    p.lost = {beyond(-p.artwork.left), beyond(-p.artwork.bottom), beyond(p.artwork.right - 297_mm), beyond(p.artwork.top - 210_mm)};
    p.white = {beyond(p.artwork.left), beyond(p.artwork.bottom), beyond(297_mm - p.artwork.right), beyond(210_mm - p.artwork.top)};
    p.ppi_x = p.ppi_y = 300;
    return p;
}

Findings of(const kit::Set& set, const compose::Placement& placement, Print print = Print::borderless) {
    Findings findings;
    checks::check_placement(rules(), set, a4(print), placement, "art/1.png", findings);
    return findings;
}

artwork::Facts picture() {
    artwork::Facts facts;
    facts.width = 3579;
    facts.height = 2621;
    facts.density = artwork::Density{299.9994, 299.9994};
    facts.ink.box = {10, 10, 100, 100};
    facts.ink.coverage = 0.2;
    return facts;
}

Findings of(const kit::Set& set, const artwork::Facts& facts) {
    Findings findings;
    checks::check_artwork(rules(), set, {"art/1.png", facts.damage, &facts, nullptr, {}}, findings);
    return findings;
}

}  // namespace

TEST_CASE("artwork must cover the paper, to the tenth of a millimetre") {
    CHECK(of(pages(), centred({303_mm, 221.9_mm})).empty());
    CHECK(times(of(pages(), centred({296.8_mm, 221.9_mm})), "artwork-covers-paper") == 1);
    CHECK(times(of(pages(), centred({303_mm, 209.8_mm})), "artwork-covers-paper") == 1);
    kit::Set contained = pages();
    contained.place = kit::Place::contain;
    CHECK(of(contained, centred({296.8_mm, 200_mm})).empty());
}

TEST_CASE("the bleed that a set promises must be there on the paper") {
    CHECK(times(of(pages(), centred({302.8_mm, 221.9_mm})), "artwork-bleed") == 1);
    CHECK(of(pages(), centred({302.95_mm, 221.9_mm})).empty());
    kit::Set without = pages();
    without.bleed = {};
    CHECK(of(without, centred({297_mm, 210_mm})).empty());
}

TEST_CASE("pixels: warned below 225 ppi, refused below 150") {
    // 1.5 x 150 lpi, the lower end of the usual quality factor 1.5 to 2.
    compose::Placement p = centred({303_mm, 221.9_mm});
    p.ppi_x = p.ppi_y = 225;
    CHECK(of(pages(), p).empty());
    p.ppi_y = 224;
    CHECK(times(of(pages(), p), "artwork-ppi") == 1);
    p.ppi_x = 149;
    const Findings low = of(pages(), p);
    CHECK(times(low, "artwork-ppi-low") == 1);
    CHECK(times(low, "artwork-ppi") == 0);
    CHECK(has_errors(low));
}

TEST_CASE("a safe area smaller than what borderless drivers take off an edge is told") {
    // HP driver data: a borderless letter canvas of 627.552 pt on 612 pt, 2.743 mm more on each
    // side; the limit is that, rounded up to 3 mm.
    kit::Set set = pages();
    set.safe_area = 3_mm;
    CHECK(of(set, centred({303_mm, 221.9_mm})).empty());
    set.safe_area = 2.9_mm;
    CHECK(times(of(set, centred({303_mm, 221.9_mm})), "artwork-safe-area") == 1);
}

TEST_CASE("covering may cut off the bleed and not more than the safe area") {
    kit::Set set = pages();
    set.place = kit::Place::cover;
    CHECK(of(set, centred({297_mm + 17.9_mm, 210_mm})).empty());
    CHECK(times(of(set, centred({297_mm + 18.2_mm, 210_mm})), "artwork-safe-area") == 1);
}

TEST_CASE("what a file is: damage, blank pages, lying densities, recoding") {
    CHECK(of(pages(), picture()).empty());
    artwork::Facts facts = picture();
    facts.damage = "it ends too early";
    CHECK(times(of(pages(), facts), "artwork-damaged") == 1);
    facts = picture();
    facts.ink.box = {};
    CHECK(times(of(pages(), facts), "artwork-blank") == 1);
    facts = picture();
    facts.density = artwork::Density{296, 296};
    CHECK(times(of(pages(), facts), "artwork-density-tag") == 1);
    facts.density = artwork::Density{298, 298};
    CHECK(of(pages(), facts).empty());
    facts = picture();
    facts.passage = artwork::Passage::recoded;
    facts.why_recoded = "it is interlaced";
    const Findings recoded = of(pages(), facts);
    REQUIRE(times(recoded, "artwork-recoded") == 1);
    CHECK(recoded[0].level == Level::note);
}

TEST_CASE("a font that PDF artwork does not carry is told with its page, one that it carries is not") {
    proof::FileFacts pdf;
    pdf.pages.resize(2);
    pdf.pages[0].fonts = {{"Vollkorn", true, true}};
    pdf.pages[1].fonts = {{"Helvetica", false, false}, {"Lato", true, false}};
    Ink ink;
    ink.box = {0, 0, 9, 9};
    ink.coverage = 0.2;
    Findings findings;
    checks::check_artwork(rules(), pages(), {"art/a.pdf", "", nullptr, &pdf, {&ink, &ink}}, findings);
    REQUIRE(times(findings, "fonts-embedded") == 1);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].page == 2);
    CHECK(findings[0].measured == "Helvetica");
    CHECK(findings[0].level == Level::error);
}

TEST_CASE("a set's faces belong together") {
    const Size wide{303_mm, 221.9_mm};
    const auto of_faces = [](const kit::Set& set, const std::vector<std::optional<Size>>& sizes) {
        std::vector<checks::FaceSeen> faces;
        for (const auto& size : sizes) faces.push_back({"art/" + std::to_string(faces.size() + 1) + ".png", 0, size});
        Findings findings;
        checks::check_set(rules(), set, faces, 0, findings);
        return findings;
    };
    kit::Set set = pages();
    CHECK(of_faces(set, {wide, wide, wide}).empty());
    set.sides = kit::Sides::duplex;
    CHECK(times(of_faces(set, {wide, wide, wide}), "odd-faces") == 1);
    CHECK(of_faces(set, {wide, wide}).empty());
    set.last_back = kit::LastBack{};
    CHECK(of_faces(set, {wide, wide, wide}).empty());
    const Findings mixed = of_faces(set, {wide, wide.turned(), wide, wide});
    REQUIRE(times(mixed, "mixed-orientation") == 1);
    CHECK(mixed[0].file == "art/2.png");
    CHECK(times(of_faces(set, {wide, std::nullopt}), "artwork-size-known") == 1);
    set.place = kit::Place::cover;
    CHECK(of_faces(set, {wide, std::nullopt}).empty());
}
