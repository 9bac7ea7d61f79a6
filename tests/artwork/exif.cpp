// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/exif.h"
#include "artwork/jpeg_files.h"

#include <catch2/catch.hpp>

using namespace qw::artwork;
using namespace qw::artwork::test;

TEST_CASE("orientation and resolution are read in both byte orders", "[artwork][exif]") {
    for (const bool little : {false, true}) {
        const Exif exif = read_exif(tiff(little, 6, 300, 150));
        CHECK(exif.turn == 6);
        REQUIRE(exif.density);
        CHECK(exif.density->x == 300);
        CHECK(exif.density->y == 150);
        CHECK(read_exif(tiff(little, 1, 118, 118, 3)).density->x == Approx(299.72));  // per centimetre
        CHECK_FALSE(read_exif(tiff(little, 1, 300, 300, 1)).density);                 // unit 1: none
        CHECK_FALSE(read_exif(tiff(little, 1, 0, 300)).density);
        for (const int wrong : {0, 9, 255, 65535}) CHECK(read_exif(tiff(little, wrong)).turn == 1);
    }
}

TEST_CASE("EXIF that is cut off, changed or points out of itself is not believed and does no harm", "[artwork][exif]") {
    CHECK(read_exif({}).turn == 1);
    for (const bool little : {false, true}) {
        const Bytes whole = tiff(little, 8);
        for (std::size_t length = 0; length < whole.size(); ++length) {
            // A copy of just that size, so that a sanitizer sees every byte read too far.
            const Exif exif = read_exif(Bytes(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(length)));
            CHECK(exif.turn == (length >= 22 ? 8 : 1));
            CHECK_FALSE(exif.density);
        }
        for (std::size_t at = 0; at < whole.size(); ++at)
            for (const unsigned flip : {1u, 0x80u, 0xFFu}) {
                Bytes changed = whole;
                changed[at] ^= static_cast<std::byte>(flip);
                const int turn = read_exif(changed).turn;
                CHECK((turn >= 1 && turn <= 8));
            }
    }
}
