// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of PNG, written and judged by libpng.
#include "artwork/ink_rows.h"
#include "artwork/judge.h"
#include "base/fault.h"

#include <catch2/catch.hpp>
#include <png.h>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;

namespace {

struct Kind_ {
    int type, bits;
};
// PNG specification, table 11.1.
const std::vector<Kind_> kinds = {{0, 1}, {0, 2}, {0, 4}, {0, 8}, {0, 16}, {2, 8},  {2, 16}, {3, 1},
                                  {3, 2}, {3, 4}, {3, 8}, {4, 8}, {4, 16}, {6, 8}, {6, 16}};

void judge(const PngWish& wish) {
    CAPTURE(wish.type, wish.bits, wish.interlaced, wish.transparency, wish.width, wish.height, wish.filters);
    const Bytes file = write_png(wish);
    const auto decoded = decode_png(file);
    REQUIRE(decoded);
    const Facts facts = look_at(file);
    REQUIRE(facts.damage == "");
    CHECK(facts.kind == Kind::png);
    CHECK(facts.bytes == file.size());
    CHECK(facts.sha256 == sha256_of(file));
    CHECK(facts.width == wish.width);
    CHECK(facts.height == wish.height);
    CHECK(facts.turn == 1);
    CHECK(facts.bits == wish.bits);
    CHECK(facts.colour == (wish.type == 3 ? Colour::palette : wish.type % 4 == 0 ? Colour::grey : Colour::rgb));
    CHECK(facts.alpha == (wish.transparency || wish.type >= 4));
    CHECK(facts.interlaced == wish.interlaced);
    const bool through = !wish.interlaced && !wish.transparency && wish.type <= 3 && wish.bits <= 8;
    CHECK((facts.passage == Passage::through) == through);
    CHECK(facts.why_recoded.empty() == through);
    require_same(facts.ink, plain_ink(on_paper(*decoded), cell_for(wish.width, wish.height)));

    Bytes data;
    for (const Found& found : chunks_of(file)) {
        const auto body = file.begin() + static_cast<std::ptrdiff_t>(found.at);
        if (found.name == "IDAT") data.insert(data.end(), body, body + static_cast<std::ptrdiff_t>(found.length));
        if (found.name == "PLTE" && wish.type == 3) CHECK(facts.palette == Bytes(body, body + static_cast<std::ptrdiff_t>(found.length)));
    }
    CHECK(facts.payload_sha256 == (through ? sha256_of(data) : ""));
    Bytes listed;
    for (const Extent& extent : facts.payload)
        listed.insert(listed.end(), file.begin() + static_cast<std::ptrdiff_t>(extent.offset),
                      file.begin() + static_cast<std::ptrdiff_t>(extent.offset + extent.length));
    CHECK(listed == (through ? data : Bytes{}));
}

}  // namespace

TEST_CASE("every colour type and depth of PNG is measured as libpng decodes it", "[artwork][png]") {
    for (const Kind_ kind : kinds)
        for (const bool interlaced : {false, true})
            for (const bool transparency : {false, true}) {
                if (transparency && kind.type >= 4) continue;
                PngWish wish;
                wish.type = kind.type;
                wish.bits = kind.bits;
                wish.interlaced = interlaced;
                wish.transparency = transparency;
                judge(wish);
            }
}

TEST_CASE("every filter is undone, at every distance between pixels", "[artwork][png]") {
    for (const Kind_ kind : kinds)
        for (const int filter : {PNG_FILTER_NONE, PNG_FILTER_SUB, PNG_FILTER_UP, PNG_FILTER_AVG, PNG_FILTER_PAETH}) {
            PngWish wish;
            wish.type = kind.type;
            wish.bits = kind.bits;
            wish.filters = filter;
            wish.width = 101;
            judge(wish);
        }
}

TEST_CASE("pictures of a few pixels have all, some or none of the seven passes", "[artwork][png]") {
    for (const Kind_ kind : {Kind_{0, 1}, Kind_{2, 8}, Kind_{3, 4}, Kind_{6, 16}})
        for (std::uint32_t width = 1; width <= 9; ++width)
            for (std::uint32_t height = 1; height <= 9; ++height)
                for (const bool interlaced : {false, true}) {
                    PngWish wish;
                    wish.type = kind.type;
                    wish.bits = kind.bits;
                    wish.width = width;
                    wish.height = height;
                    wish.interlaced = interlaced;
                    judge(wish);
                }
}

TEST_CASE("a picture wider than a window, and rows that straddle windows and chunks", "[artwork][png]") {
    PngWish wish;
    wish.width = 300'007;
    wish.height = 3;
    wish.type = 6;
    judge(wish);
    wish = {};
    wish.width = 1234;
    wish.height = 777;
    wish.idat_bytes = 31;  // thousands of chunks
    judge(wish);
}

TEST_CASE("cells grow with the picture and keep to 225 a side", "[artwork][ink]") {
    CHECK(cell_for(1, 1) == 1);
    CHECK(cell_for(225, 225) == 1);
    CHECK(cell_for(226, 1) == 2);
    CHECK(cell_for(3300, 2550) == 16);  // a letter sheet at 300 ppi
    CHECK(cell_for(2621, 3579) == 16);
    CHECK(cell_for(3601, 10) == 32);
    PngWish wish;
    wish.type = 0;
    wish.width = 1801;
    wish.height = 905;
    judge(wish);
    wish.interlaced = true;
    judge(wish);
}

TEST_CASE("a blank picture has no ink", "[artwork][ink]") {
    for (const Kind_ kind : kinds) {
        PngWish wish;
        wish.type = kind.type;
        wish.bits = kind.bits;
        wish.blank = true;
        const Facts facts = look_at(write_png(wish));
        REQUIRE(facts.damage == "");
        CHECK(facts.ink.box.empty());
        CHECK(facts.ink.coverage == 0);
    }
}

TEST_CASE("pHYs gives pixels per inch", "[artwork][png]") {
    // PNG specification, 11.3.4.3: pixels per unit, the unit is the metre. Rows: ppi × 10000 / 254, rounded.
    const std::pair<std::uint32_t, double> rows[] = {{2835, 72}, {3780, 96}, {5906, 150}, {11811, 300}, {23622, 600}};
    for (const auto& [per_metre, ppi] : rows) {
        PngWish wish;
        wish.more = [n = per_metre](png_structp png, png_infop info) { png_set_pHYs(png, info, n, 2 * n, PNG_RESOLUTION_METER); };
        const Facts facts = look_at(write_png(wish));
        REQUIRE(facts.density);
        CHECK(facts.density->x == Approx(ppi).margin(0.02));
        CHECK(facts.density->y == Approx(2 * ppi).margin(0.04));
    }
    PngWish wish;
    CHECK_FALSE(look_at(write_png(wish)).density);
    wish.more = [](png_structp png, png_infop info) { png_set_pHYs(png, info, 3, 4, PNG_RESOLUTION_UNKNOWN); };
    CHECK_FALSE(look_at(write_png(wish)).density);
}

TEST_CASE("what stands in the way of passing a PNG through is told", "[artwork][png]") {
    PngWish wish;
    wish.type = 6;
    wish.bits = 16;
    wish.interlaced = true;
    CHECK(look_at(write_png(wish)).why_recoded == "it is interlaced, it has 16 bits a sample and it has an alpha channel");
    wish = {};
    wish.transparency = true;
    CHECK(look_at(write_png(wish)).why_recoded == "it names transparent colours");
}

TEST_CASE("a file is read once, from a source that gives a little at a time", "[artwork]") {
    PngWish wish;
    wish.type = 6;
    HeldDisk disk(write_png(wish));
    const Facts at_once = look(disk, "a");
    CHECK(disk.bytes_read == disk.bytes.size());
    disk.most_at_once = 3;
    disk.bytes_read = 0;
    const Facts in_pieces = look(disk, "a");
    CHECK(disk.bytes_read == disk.bytes.size());
    CHECK(in_pieces.sha256 == at_once.sha256);
    require_same(in_pieces.ink, at_once.ink);
}

TEST_CASE("a disk that fails is a fault, not damage", "[artwork]") {
    PngWish wish;
    HeldDisk disk(write_png(wish));
    disk.most_at_once = 16;
    for (std::uint64_t at = 0; at < disk.bytes.size(); at += 97) {
        disk.fails_from = at;
        CHECK_THROWS_AS(look(disk, "a"), Fault);
    }
}
