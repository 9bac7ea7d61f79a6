// SPDX-License-Identifier: GPL-3.0-or-later
// How hard a JPEG was packed, held against libjpeg-turbo, which packed it. The checksum of samples knows a picture again.
#include "artwork/facts.h"
#include "artwork/jpeg_files.h"
#include "artwork/jpeg_quality.h"
#include "artwork/png_files.h"

#include "artwork/held_disk.h"

#include <catch2/catch.hpp>

#include <array>

using namespace qw;
using namespace qw::artwork::test;

namespace {

artwork::Facts facts_of_bytes(const Bytes& bytes) {
    HeldDisk disk(bytes);
    return artwork::look(disk, "picture");
}

}  // namespace

TEST_CASE("the step that libjpeg-turbo packed with is told for every quality") {
    const Pixels pixels = drawing(64, 48, 4);
    for (int quality = 1; quality <= 100; ++quality) {
        JpegWish wish;
        wish.quality = quality;
        INFO(quality);
        CHECK(facts_of_bytes(write_jpeg(wish, pixels)).jpeg_quality == quality);
        wish.colour = JpegWish::Colour::grey;
        wish.progressive = true;
        CHECK(facts_of_bytes(write_jpeg(wish, pixels)).jpeg_quality == quality);
    }
}

TEST_CASE("a table of another program gets the nearest step; one with zeros none") {
    std::array<std::uint16_t, 64> table;
    table.fill(1);
    CHECK(artwork::jpeg_quality(table) == 100);
    table.fill(255);
    CHECK(artwork::jpeg_quality(table) <= 15);
    table[5] = 0;
    CHECK(artwork::jpeg_quality(table) == 0);
}

TEST_CASE("the same samples packed otherwise have the same checksum, one changed pixel has another") {
    PngWish wish;
    wish.width = 90;
    wish.height = 70;
    wish.type = 2;
    wish.bits = 8;
    wish.filters = 0x10;
    const std::string plain = facts_of_bytes(write_png(wish)).pixels;
    wish.filters = 0x08;
    CHECK(facts_of_bytes(write_png(wish)).pixels == plain);
    wish.interlaced = true;
    CHECK(facts_of_bytes(write_png(wish)).pixels == plain);
    wish.interlaced = false;
    wish.width = 91;
    CHECK(facts_of_bytes(write_png(wish)).pixels != plain);
    Pixels pixels = drawing(64, 48, 4);
    JpegWish jpeg;
    const std::string whole = facts_of_bytes(write_jpeg(jpeg, pixels)).pixels;
    jpeg.progressive = true;
    CHECK(facts_of_bytes(write_jpeg(jpeg, pixels)).pixels == whole);
    pixels.rgb[3 * (20 * 64 + 30)] ^= 0x80;
    CHECK(facts_of_bytes(write_jpeg(jpeg, pixels)).pixels != whole);
}
