// SPDX-License-Identifier: GPL-3.0-or-later
// Which backs come out upright is worked out here by turning the four corners of a sheet of paper, not by a table.
#include "checks/duplex_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

// PWG 5101.1-2023, na_letter_8.5x11in and iso_a4_210x297mm.
const Size letter_across{11_in, 8.5_in}, letter_up{8.5_in, 11_in}, a4_across{297_mm, 210_mm};

proof::PageFacts page_of(Size size, int rotate = 0) {
    proof::PageFacts page;
    page.media = page.crop = page.bleed = page.trim = Rect::of(size);
    page.rotate = rotate;
    return page;
}

proof::FileFacts file_of(const std::string& duplex, int sheets, Size size) {
    proof::FileFacts file;
    file.duplex = duplex;
    file.pages.assign(static_cast<std::size_t>(sheets) * 2, page_of(size));
    return file;
}

Findings judged(const proof::FileFacts& file, bool both_sides = true) {
    Findings findings;
    checks::check_backs(rules(), both_sides, file, "letter/borderless/pages.pdf", findings);
    return findings;
}

/// A point of the back as it lies on the paper, seen through from the front, so that turning the sheet over that edge
/// shows the back as it was drawn: mirrored about the upright middle line when the edge is an upright one.
Point on_paper(Point drawn, Size size, bool short_edge) {
    const bool upright_edge = short_edge == size.landscape();
    return upright_edge ? Point{size.width - drawn.x, drawn.y} : Point{drawn.x, size.height - drawn.y};
}
/// The same point for whoever turns the sheet like a page.
Point seen(Point paper, Size size) { return {size.width - paper.x, paper.y}; }

}  // namespace

TEST_CASE("backs are upright where turning the sheet like a page leaves the head at the head") {
    for (const Size size : {letter_across, letter_up, a4_across}) {
        for (const bool short_edge : {true, false}) {
            const Point head{size.width * 0.3, size.height * 0.9};
            const bool upright = seen(on_paper(head, size, short_edge), size).y > size.height / 2;
            const auto turn = short_edge ? checks::Turn::short_edge : checks::Turn::long_edge;
            CHECK(checks::back_upright(size, turn) == upright);
        }
    }
    CHECK_FALSE(checks::back_upright({200_mm, 200_mm}, checks::Turn::short_edge));
}

TEST_CASE("only the two names of the standard ask for a turn") {
    // ISO 32000-1 table 150: Simplex, DuplexFlipShortEdge, DuplexFlipLongEdge.
    CHECK(checks::turn_asked(file_of("DuplexFlipShortEdge", 1, letter_across)) == checks::Turn::short_edge);
    CHECK(checks::turn_asked(file_of("DuplexFlipLongEdge", 1, letter_across)) == checks::Turn::long_edge);
    for (const char* other : {"", "Simplex", "duplexflipshortedge", "DuplexFlipShortEdge2"}) CHECK_FALSE(checks::turn_asked(file_of(other, 1, letter_across)));
}

TEST_CASE("each upside-down back is told once, with its page") {
    CHECK(judged(file_of("DuplexFlipShortEdge", 20, letter_across)).empty());
    CHECK(judged(file_of("DuplexFlipLongEdge", 20, letter_up)).empty());
    for (const auto& file : {file_of("DuplexFlipLongEdge", 20, letter_across), file_of("DuplexFlipShortEdge", 20, letter_up)}) {
        const Findings found = judged(file);
        REQUIRE(found.size() == 20);
        for (std::size_t i = 0; i < found.size(); ++i) {
            CHECK(found[i].rule == "backs-upright");
            CHECK(found[i].level == Level::error);
            CHECK(found[i].page == static_cast<int>(i + 1) * 2);
            CHECK(found[i].measured == "Duplex " + file.duplex);
        }
    }
}

TEST_CASE("pages are judged as Rotate shows them") {
    proof::FileFacts file = file_of("DuplexFlipShortEdge", 3, letter_up);
    for (auto& page : file.pages) page.rotate = 90;
    CHECK(judged(file).empty());
    file.pages[3].rotate = -90;
    CHECK(judged(file).empty());
    file.pages[3].rotate = 180;  // shown in portrait, across its front
    const Findings found = judged(file);
    REQUIRE(found.size() == 1);
    CHECK(found[0].rule == "backs-same-size");
    CHECK(found[0].page == 4);
}

TEST_CASE("a back of another size than its front is told, and judged all the same while it is held alike") {
    proof::FileFacts file = file_of("DuplexFlipShortEdge", 4, letter_across);
    file.pages[5] = page_of(a4_across);
    Findings found = judged(file);
    REQUIRE(found.size() == 1);
    CHECK(found[0].rule == "backs-same-size");
    CHECK(found[0].page == 6);
    CHECK(found[0].measured == "297 x 210 mm, landscape");
    file.duplex = "DuplexFlipLongEdge";
    found = judged(file);
    CHECK(times(found, "backs-same-size") == 1);
    CHECK(times(found, "backs-upright") == 4);
    file.pages[5] = page_of(letter_up);
    CHECK(times(judged(file), "backs-upright") == 3);
    // UserUnit: twice the units of half the size are the same paper.
    file = file_of("DuplexFlipShortEdge", 1, letter_across);
    file.pages[1] = page_of(letter_across * 0.5);
    CHECK(times(judged(file), "backs-same-size") == 1);
    file.pages[1].user_unit = 2;
    CHECK(judged(file).empty());
}

TEST_CASE("a file for both sides that names no edge is told once") {
    for (const char* entry : {"", "Simplex", "FlipShortEdge"}) {
        const Findings found = judged(file_of(entry, 20, letter_across));
        REQUIRE(found.size() == 1);
        CHECK(found[0].rule == "duplex-entry");
        CHECK(found[0].level == Level::warning);
        CHECK(found[0].page == 0);
        CHECK(found[0].limit == "Duplex DuplexFlipShortEdge");
    }
    CHECK(judged(file_of("", 1, letter_up))[0].limit == "Duplex DuplexFlipLongEdge");
    proof::FileFacts mixed = file_of("", 2, letter_across);
    mixed.pages[3] = page_of(letter_up);
    CHECK(times(judged(mixed), "backs-same-size") == 1);
}

TEST_CASE("files of one side are left alone unless they ask for a turn") {
    CHECK(judged(file_of("", 3, letter_across), false).empty());
    CHECK(judged(file_of("Simplex", 3, letter_across), false).empty());
    CHECK(times(judged(file_of("DuplexFlipLongEdge", 3, letter_across), false), "backs-upright") == 3);
    proof::FileFacts odd = file_of("DuplexFlipLongEdge", 2, letter_across);
    odd.pages.pop_back();  // a front without a back
    CHECK(judged(odd).size() == 1);
    proof::FileFacts damaged = file_of("DuplexFlipLongEdge", 2, letter_across);
    damaged.damage = "no xref";
    CHECK(judged(damaged).empty());
    CHECK(judged(file_of("", 0, letter_across)).empty());
}
