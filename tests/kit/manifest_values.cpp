// SPDX-License-Identifier: GPL-3.0-or-later
// What a manifest without faults comes to: values, defaults and marks.
#include "kit/example.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("a short manifest gets the defaults") {
    ExampleKit kit;
    const kit::Manifest m = kit.read(
        "kit: sea\ntitle: Sea\nversion: 1.0.0\njournal: soft-spine\npapers: [a4]\nsets:\n"
        "  pages: { role: journal-page, files: art/*.png }\n"
        "  covers: { role: full-sheet, files: art/1.png }\n"
        "  more: { role: extra, files: art/2.png }\n");
    CHECK(m.prints == std::vector<Print>{Print::borderless, Print::bordered});
    CHECK(*m.printer == "most-home-printers");
    CHECK(*m.board_stock == "greyboard-1mm");
    CHECK(m.board_stock.mark.file == "pipeline/stocks.yaml");
    CHECK(m.borders == kit::Borders::trimmed);
    CHECK(m.shop->empty());
    CHECK_FALSE(m.date);
    CHECK(m.overrides.empty());
    REQUIRE(m.sets.size() == 3);
    CHECK(m.sets[0].sides == kit::Sides::duplex);  // journal pages are printed back to back
    CHECK(m.sets[1].sides == kit::Sides::single);
    CHECK(*m.sets[0].stock == "copy-100");
    CHECK(*m.sets[1].stock == "copy-80");
    CHECK(*m.sets[2].stock == "copy-100");
    for (const kit::Set& set : m.sets) {
        CHECK(set.bleed == Length::mm(3));
        CHECK(set.safe_area == Length::mm(6));
        CHECK(set.place == kit::Place::as_drawn);
        CHECK_FALSE(set.drawn_at);
        CHECK_FALSE(set.print_at);
        CHECK_FALSE(set.last_back);
    }
}

TEST_CASE("a manifest with every key") {
    ExampleKit kit;
    const kit::Manifest m = kit.read(
        "kit: tidewater-almanac\n"
        "title: \"Tides: an almanac\"\n"
        "version: 1.2.0-beta.3\n"
        "journal: soft-spine\n"
        "papers: [iso_a4_210x297mm, letter]\n"
        "prints: [bordered]\n"
        "shop: small-files\n"
        "date: 2026-09-01\n"
        "printer: narrow-3mm\n"
        "board-stock: greyboard-1mm\n"
        "borders: kept\n"
        "rules:\n"
        "  artwork-ppi: { limit: 200 ppi, level: note, reason: \"soft by   intent\" }\n"
        "  artwork-safe-area: { limit: 1/8 in, reason: wide }\n"
        "  odd-faces: { level: off, reason: the last back is empty }\n"
        "sets:\n"
        "  pages:\n"
        "    role: journal-page\n"
        "    files: [art/1.png]\n"
        "    sides: duplex\n"
        "    last-back: blank\n"
        "    drawn-at: 303 x 221.9 mm\n"
        "    bleed: 1/8 in\n"
        "    safe-area: 0.5 cm\n"
        "    place: cover\n"
        "    stock: card-160\n"
        "    print-at: 97.5 %\n");
    CHECK(m.title == "Tides: an almanac");
    CHECK(m.version == "1.2.0-beta.3");
    REQUIRE(m.papers.size() == 2);
    CHECK(m.papers[0].short_name == "a4");
    CHECK(m.papers[1].name == "na_letter_8.5x11in");
    CHECK(m.prints == std::vector<Print>{Print::bordered});
    CHECK(*m.shop == "small-files");
    CHECK(m.shop.mark.line == 7);
    REQUIRE(m.date);
    CHECK(*m.date == Date{2026, 9, 1});
    CHECK(*m.printer == "narrow-3mm");
    CHECK(m.borders == kit::Borders::kept);
    REQUIRE(m.overrides.size() == 3);
    CHECK(m.overrides[0].limit == 200.0);
    CHECK(m.overrides[0].level == std::string("note"));
    CHECK(m.overrides[0].reason == "soft by intent");
    CHECK(m.overrides[0].mark.line == 13);
    CHECK(m.overrides[1].limit == Approx(3.175));  // 1/8 in, in the rule's millimetres
    CHECK(m.overrides[2].level == std::string("off"));
    const kit::Set& set = m.sets.at(0);
    CHECK(set.name == "pages");
    CHECK(set.mark.line == 17);
    CHECK(set.mark.column == 3);
    REQUIRE(set.last_back);
    CHECK_FALSE(set.last_back->file);
    CHECK(set.last_back->mark.line == 21);
    CHECK(set.drawn_at == Size{Length::mm(303), Length::mm(221.9)});
    CHECK(set.bleed == Length::inches(0.125));
    CHECK(set.safe_area == Length::mm(5));
    CHECK(set.place == kit::Place::cover);
    CHECK(set.print_at == Approx(0.975));
}

TEST_CASE("sizes are written in many ways") {
    ExampleKit kit;
    const auto size = [&](const std::string& text) { return kit.read(with(sound_manifest, "stock: copy-100", "drawn-at: " + text)).sets[0].drawn_at; };
    const Size wanted{Length::mm(303), Length::mm(221.9)};
    for (const char* text : {"303 x 221.9 mm", "303x221.9mm", "303 mm x 221.9 mm", "303 × 221.9 mm", "303×221.9 mm", "30.3 cm x 221.9 mm",
                             "30.3 x 22.19 cm", "303 X 221.9 mm"}) {
        INFO(text);
        CHECK(size(text) == wanted);
    }
    CHECK(size("11 3/4 x 8 1/2 in") == Size{Length::inches(11.75), Length::inches(8.5)});
    CHECK(size("792 x 612 pt") == Size{Length::inches(11), Length::inches(8.5)});
    CHECK(kit.read(with(sound_manifest, "stock: copy-100", "print-at: with-pages")).sets[0].print_at == std::nullopt);
    CHECK(kit.read(with(sound_manifest, "stock: copy-100", "print-at: 100%")).sets[0].print_at == Approx(1));
    CHECK(kit.read(with(sound_manifest, "stock: copy-100", "print-at: 30 %")).sets[0].print_at == Approx(0.3));
    CHECK(kit.read(with(sound_manifest, "stock: copy-100", "print-at: 103 %")).sets[0].print_at == Approx(1.03));
    CHECK(kit.read(with(sound_manifest, "stock: copy-100", "bleed: 0 mm")).sets[0].bleed == Length());
}

TEST_CASE("roles, places and levels have the names that manifests use") {
    CHECK(name_of(kit::Role::journal_page) == "journal-page");
    CHECK(name_of(kit::Role::full_sheet) == "full-sheet");
    CHECK(name_of(kit::Role::part) == "part");
    CHECK(name_of(kit::Role::extra) == "extra");
    CHECK(name_of(kit::Place::as_drawn) == "as-drawn");
    CHECK(name_of(kit::Place::cover) == "cover");
    CHECK(name_of(kit::Place::contain) == "contain");
}
