// SPDX-License-Identifier: GPL-3.0-or-later
// Small JPEG files of each kind, cut off at every length and with every byte changed. libjpeg is the judge.
#include "artwork/ink_rows.h"
#include "artwork/jpeg_files.h"
#include "artwork/profiles.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;
using Wish = JpegWish::Colour;

namespace {

std::vector<Bytes> small_files() {
    std::vector<Bytes> files;
    const auto add = [&](JpegWish wish) { files.push_back(write_jpeg(wish, drawing(37, 29, 3))); };
    JpegWish wish;
    add(wish);
    wish.progressive = true;
    add(wish);
    wish = {};
    wish.colour = Wish::grey;
    wish.restart_rows = 1;
    wish.exif = tiff(true, 6);
    add(wish);
    wish = {};
    wish.colour = Wish::rgb;
    add(wish);
    wish = {};
    wish.arithmetic = true;
    add(wish);
    return files;
}

}  // namespace

TEST_CASE("a JPEG cut off anywhere is damaged", "[artwork][jpeg][fuzz]") {
    auto files = small_files();
    JpegWish cmyk;
    cmyk.colour = Wish::ycck;
    cmyk.icc = plain_cmyk();
    for (const Bytes& file : files) {
        REQUIRE(look_at(file).damage == "");
        for (std::size_t length = 0; length < file.size(); ++length) {
            CAPTURE(length, file.size());
            CHECK(look_at(Bytes(file.begin(), file.begin() + static_cast<std::ptrdiff_t>(length))).damage != "");
        }
    }
    const Bytes file = write_jpeg(cmyk, drawing(37, 29, 3));
    REQUIRE(look_at(file).damage == "");
    for (std::size_t length = 0; length < file.size(); length += 1 + length / 64)
        CHECK(look_at(Bytes(file.begin(), file.begin() + static_cast<std::ptrdiff_t>(length))).damage != "");
}

TEST_CASE("a JPEG with a changed byte is damaged or as libjpeg sees it", "[artwork][jpeg][fuzz]") {
    std::size_t taken = 0;
    for (const Bytes& file : small_files()) {
        for (std::size_t at = 0; at < file.size(); ++at) {
            for (const unsigned flip : {1u, 0x80u, 0xFFu}) {
                CAPTURE(at, file.size(), flip);
                Bytes changed = file;
                changed[at] ^= static_cast<std::byte>(flip);
                const Facts facts = look_at(changed);
                CHECK(facts.sha256 == sha256_of(changed));
                if (!facts.damage.empty()) continue;
                ++taken;
                const auto pixels = facts.colour == Colour::rgb && facts.passage == Passage::through ? decode_luma(changed) : decode_jpeg(changed);
                REQUIRE(pixels);
                CHECK(facts.width == pixels->width);
                CHECK(facts.height == pixels->height);
            }
        }
    }
    CHECK(taken > 100);  // JPEG has no check sums; many changes only change the picture
}
