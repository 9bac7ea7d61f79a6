// SPDX-License-Identifier: GPL-3.0-or-later
// A finished file that is the plan passes; every single departure from it is found by its own rule.
#include "checks/finished_rules.h"

#include "checks/pdf_rules.h"
#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

#include <functional>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

const Size letter{11_in, 8.5_in};

compose::Document plan() {
    compose::Document document;
    document.title = "Pages";
    document.duplex = compose::Duplex::flip_short_edge;
    compose::PlacedArtwork art;
    art.facts.payload_sha256 = std::string(64, 'a');
    art.facts.width = 3300;
    art.facts.height = 2550;
    document.artwork.push_back(art);
    compose::Page page{letter, Rect::of(letter), Rect::of(letter), {}};
    page.items.push_back(compose::Picture{0, {792, 0, 0, 612, 0, 0}, Rect::of(letter)});
    document.pages.push_back(page);
    return document;
}

/// What proof says of a file that is exactly the plan.
proof::FileFacts faithful() {
    proof::FileFacts seen;
    seen.title = "Pages";
    seen.print_scaling = "None";
    seen.duplex = "DuplexFlipShortEdge";
    seen.pick_tray_by_pdf_size = true;
    seen.output_intent = "sRGB IEC61966-2.1";
    seen.output_profile = true;
    proof::PageFacts page;
    page.media = page.crop = page.bleed = page.trim = Rect::of(letter);
    page.has_trim = page.has_bleed = true;
    proof::PlacedPicture picture;
    picture.stream_sha256 = std::string(64, 'a');
    picture.width = 3300;
    picture.height = 2550;
    picture.place = {792, 0, 0, 612, 0, 0};
    picture.clip = Rect::of(letter);
    page.pictures.push_back(picture);
    seen.pages.push_back(page);
    return seen;
}

Findings of(const proof::FileFacts& seen) {
    Findings findings;
    checks::check_finished(rules(), plan(), seen, "letter/borderless/pages.pdf", findings);
    checks::SeenPdf by_itself;
    by_itself.path = "letter/borderless/pages.pdf";
    by_itself.facts = &seen;
    by_itself.role = "journal-page";
    by_itself.planned = true;
    checks::check_pdf(rules(), by_itself, findings);
    return findings;
}

}  // namespace

TEST_CASE("every departure of a finished file from its plan is found") {
    CHECK(of(faithful()).empty());
    const std::vector<std::pair<std::string, std::function<void(proof::FileFacts&)>>> departures = {
        {"file-damaged", [](auto& f) { f.damage = "no xref"; }},
        {"page-count", [](auto& f) { f.pages.push_back(f.pages[0]); }},
        {"page-size", [](auto& f) { f.pages[0].media.right += 1_mm; f.pages[0].crop = f.pages[0].media; }},
        {"page-size", [](auto& f) { f.pages[0].rotate = 90; }},
        {"page-boxes", [](auto& f) { f.pages[0].has_trim = false; }},
        {"page-boxes", [](auto& f) { f.pages[0].trim.left += 1_mm; }},
        {"viewer-preferences", [](auto& f) { f.print_scaling = "AppDefault"; }},
        {"viewer-preferences", [](auto& f) { f.duplex = "DuplexFlipLongEdge"; }},
        {"viewer-preferences", [](auto& f) { f.pick_tray_by_pdf_size.reset(); }},
        {"output-intent", [](auto& f) { f.output_profile = false; }},
        {"file-title", [](auto& f) { f.title = "Untitled"; }},
        {"pdf-scripts", [](auto& f) { f.scripts = true; }},
        {"fonts-embedded", [](auto& f) { f.pages[0].fonts.push_back({"Helvetica", false, false, false, true}); }},
        {"picture-identical", [](auto& f) { f.pages[0].pictures[0].stream_sha256[5] = 'b'; }},
        {"picture-placed", [](auto& f) { f.pages[0].pictures[0].place.e = 0.2; }},
        {"picture-placed", [](auto& f) { f.pages[0].pictures[0].clip.reset(); }},
        {"picture-placed", [](auto& f) { f.pages[0].pictures.clear(); }},
        {"picture-placed", [](auto& f) { f.pages[0].pictures.push_back(f.pages[0].pictures[0]); }}};
    for (const auto& [rule, depart] : departures) {
        proof::FileFacts seen = faithful();
        depart(seen);
        const Findings found = of(seen);
        INFO(rule);
        CHECK(times(found, rule) == 1);
        CHECK(found.size() == 1);
    }
}

TEST_CASE("a picture's shape is held against what the file's clips leave") {
    compose::Document shaped = plan();
    std::get<compose::Picture>(shaped.pages[0].items[0]).shape = {{{2_in, 1_in}, {4_in, 1_in}, {3_in, 6_in}}, {{9_in, 8_in}, {12_in, 8_in}, {12_in, 9_in}}};
    const auto found = [&](const Rect& clip) {
        proof::FileFacts seen = faithful();
        seen.pages[0].pictures[0].clip = clip;
        Findings findings;
        checks::check_finished(rules(), shaped, seen, "letter/borderless/pockets.pdf", findings);
        return times(findings, "picture-placed");
    };
    CHECK(found({2_in, 1_in, 11_in, 8.5_in}) == 0);  // the box around the shape, cut at the paper
    CHECK(found(Rect::of(letter)) == 1);             // the shape was not drawn
    CHECK(found({2_in, 1_in, 4_in, 6_in}) == 1);     // half of it was not
}

namespace {

/// A page of 110 × 85 cells of 8 pixels, dark by `darkness` but for what a test takes out.
Ink even(std::uint8_t darkness) {
    Ink ink;
    ink.map = {8, 110, 85, std::vector<std::uint8_t>(110 * 85, darkness), std::vector<std::uint8_t>(110 * 85, darkness)};
    if (darkness >= ink_threshold) ink.box = {0, 0, 880, 680};
    return ink;
}

compose::Placement whole_page() {
    compose::Placement p;
    p.face = 0;
    p.sheet = letter;
    p.picture = p.artwork = p.visible = Rect::of(letter);
    return p;
}

Findings rendered(const Ink& page, const Ink& artwork) {
    Findings findings;
    checks::check_rendered_artwork(rules(), {1, letter, 880, 680, page}, whole_page(), artwork, 880, 680, true, "a.pdf", findings);
    return findings;
}

}  // namespace

TEST_CASE("ink that is missing at an edge is found, white artwork is not blamed") {
    CHECK(rendered(even(60), even(60)).empty());
    CHECK(rendered(even(0), even(0)).empty());
    Ink cut = even(60);
    for (std::uint32_t row = 0; row < 85; ++row) cut.map.mean[cut.map.at(0, row)] = 0;
    CHECK(times(rendered(cut, even(60)), "ink-to-edge") == 1);
    CHECK(rendered(cut, cut).empty());
}

TEST_CASE("a page that is darker or lighter than its artwork is found") {
    // 2 % of 255 is 5.1 levels.
    CHECK(rendered(even(65), even(60)).empty());
    CHECK(times(rendered(even(67), even(60)), "picture-alike") == 1);
    CHECK(times(rendered(even(53), even(60)), "picture-alike") == 1);
}

TEST_CASE("ink in the printer's margin is found") {
    const Rect printable = Rect::of(letter).inset(12.7_mm, 6.35_mm);
    const auto of_box = [&](const PixelBox& box) {
        Ink ink = even(60);
        ink.box = box;
        Findings findings;
        checks::check_ink_inside(rules(), {1, letter, 880, 680, ink}, printable, "a.pdf", findings);
        return findings;
    };
    // 12.7 mm of 279.4 are 40 of 880 pixels, 6.35 of 215.9 are 20 of 680.
    CHECK(of_box({40, 20, 840, 660}).empty());
    CHECK(of_box({}).empty());
    for (const PixelBox box : {PixelBox{37, 20, 840, 660}, {40, 17, 840, 660}, {40, 20, 843, 660}, {40, 20, 840, 663}})
        CHECK(times(of_box(box), "ink-inside-printable") == 1);
}
