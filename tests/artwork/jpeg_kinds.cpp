// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of JPEG, written and judged by libjpeg-turbo.
#include "artwork/ink_rows.h"
#include "artwork/jpeg_files.h"
#include "artwork/profiles.h"
#include "base/fault.h"

#include <catch2/catch.hpp>
#include <cstdio>
#include <cstdlib>

#include <jpeglib.h>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;
using Catch::Matchers::Contains;
using Wish = JpegWish::Colour;

namespace {

Facts passed(const Bytes& file) {
    const Facts facts = look_at(file);
    REQUIRE(facts.damage == "");
    CHECK(facts.kind == Kind::jpeg);
    CHECK(facts.passage == Passage::through);
    CHECK(facts.why_recoded == "");
    REQUIRE(facts.payload.size() == 1);
    CHECK(facts.payload[0].offset == 0);
    CHECK(facts.payload[0].length == file.size());
    CHECK(facts.payload_sha256 == sha256_of(file));
    CHECK(facts.sha256 == facts.payload_sha256);
    return facts;
}

std::uint32_t distance(std::uint32_t a, std::uint32_t b) { return a > b ? a - b : b - a; }

bool within_a_cell(const PixelBox& a, const PixelBox& b, std::uint32_t cell) {
    return distance(a.left, b.left) <= cell && distance(a.top, b.top) <= cell && distance(a.right, b.right) <= cell && distance(a.bottom, b.bottom) <= cell;
}

/// The file's own luma, exactly; and beside the luma of its RGB pixels, where clipping makes a little difference.
void judge_ycc(const Bytes& file) {
    const Facts facts = passed(file);
    CHECK(facts.colour == Colour::rgb);
    const std::uint32_t cell = cell_for(facts.width, facts.height);
    const auto luma = decode_luma(file), rgb = decode_jpeg(file);
    REQUIRE(luma);
    REQUIRE(rgb);
    require_same(facts.ink, plain_ink(*luma, cell));
    const Ink colours = plain_ink(*rgb, cell);
    CHECK(facts.ink.coverage == Approx(colours.coverage).margin(0.005));
    CHECK(within_a_cell(facts.ink.box, colours.box, 8));
}

}  // namespace

TEST_CASE("grey JPEG passes through and is measured exactly", "[artwork][jpeg]") {
    for (const bool progressive : {false, true}) {
        JpegWish wish;
        wish.colour = Wish::grey;
        wish.progressive = progressive;
        const Bytes file = write_jpeg(wish, drawing(533, 217, 12));
        const Facts facts = passed(file);
        CHECK(facts.colour == Colour::grey);
        CHECK(facts.width == 533);
        CHECK(facts.height == 217);
        CHECK(facts.bits == 8);
        CHECK_FALSE(facts.interlaced);
        CHECK_FALSE(facts.alpha);
        CHECK_FALSE(facts.profile);
        require_same(facts.ink, plain_ink(*decode_jpeg(file), cell_for(533, 217)));
    }
}

TEST_CASE("YCbCr JPEG of every sampling passes through and is measured by its luma", "[artwork][jpeg]") {
    for (const auto& [across, down] : {std::pair{1, 1}, {2, 1}, {1, 2}, {2, 2}, {4, 1}})
        for (const bool progressive : {false, true})
            for (const int restart : {0, 3}) {
                JpegWish wish;
                wish.across = across;
                wish.down = down;
                wish.progressive = progressive;
                wish.restart_rows = restart;
                CAPTURE(across, down, progressive, restart);
                judge_ycc(write_jpeg(wish, drawing(533, 217, 12)));
            }
}

TEST_CASE("the box of coloured lines on white is right to a cell, however roughly they are packed", "[artwork][jpeg][ink]") {
    const std::uint8_t colours[][3] = {{255, 0, 0}, {0, 0, 255}, {0, 160, 0}, {255, 220, 0}, {0, 0, 0}, {255, 0, 255}};
    for (const auto& colour : colours) {
        for (const int quality : {60, 75, 95}) {
            Pixels pixels{1200, 900, std::vector<std::uint8_t>(std::size_t{1200} * 900 * 3, 255)};
            for (std::uint32_t i = 100; i < 800; ++i)
                for (std::uint32_t side = 0; side < 4; ++side)
                    for (std::uint32_t c = 0; c < 3; ++c) {
                        const std::uint32_t x = side == 0 ? 101 : side == 1 ? 799 : i, y = side == 2 ? 101 : side == 3 ? 797 : i;
                        pixels.rgb[(std::size_t{y} * 1200 + x) * 3 + c] = colour[c];
                    }
            JpegWish wish;
            wish.quality = quality;
            const Bytes file = write_jpeg(wish, pixels);
            CAPTURE(int(colour[0]), int(colour[1]), int(colour[2]), quality);
            CHECK(within_a_cell(passed(file).ink.box, plain_ink(*decode_jpeg(file), 4).box, 8));
        }
    }
}

TEST_CASE("RGB JPEG passes through when its marker says what it is to every program", "[artwork][jpeg]") {
    JpegWish wish;
    wish.colour = Wish::rgb;
    const Pixels pixels = drawing(300, 200, 9);
    const Bytes marked = write_jpeg(wish, pixels);
    require_same(passed(marked).ink, plain_ink(*decode_jpeg(marked), cell_for(300, 200)));

    wish.adobe_marker = false;  // named R, G and B, which libjpeg goes by and PDF readers need not
    const Facts facts = look_at(write_jpeg(wish, pixels));
    CHECK(facts.damage == "");
    CHECK(facts.passage == Passage::recoded);
    CHECK_THAT(facts.why_recoded, Contains("not all programs read alike"));
    CHECK(facts.payload.empty());
    CHECK(facts.payload_sha256 == "");

    // JFIF says YCbCr, the Adobe marker (transform 0) RGB.
    const Bytes adobe = bytes_of(std::string_view("Adobe\0\x64\0\0\0\0\0", 12));
    const Bytes jfif = write_jpeg({}, pixels);
    CHECK(look_at(with_segment(jfif, 0xEE, adobe)).passage == Passage::recoded);
}

TEST_CASE("arithmetic coding does not pass through", "[artwork][jpeg]") {
    JpegWish wish;
    wish.arithmetic = true;
    const Facts facts = look_at(write_jpeg(wish, drawing(300, 200, 9)));
    CHECK(facts.damage == "");
    CHECK(facts.passage == Passage::recoded);
    CHECK_THAT(facts.why_recoded, Contains("arithmetic"));
}

TEST_CASE("CMYK needs a profile", "[artwork][jpeg][colour]") {
    for (const Wish colour : {Wish::cmyk, Wish::ycck}) {
        JpegWish wish;
        wish.colour = colour;
        CHECK(look_at(write_jpeg(wish, drawing(60, 40, 5))).damage == "CMYK without a profile cannot be converted");
        wish.icc = plain_cmyk();
        const Facts facts = look_at(write_jpeg(wish, drawing(60, 40, 5)));
        CHECK(facts.damage == "");
        CHECK(facts.colour == Colour::cmyk);
        CHECK(facts.profile);
        CHECK_FALSE(facts.profile_is_srgb);
        CHECK(facts.passage == Passage::recoded);
        CHECK(facts.why_recoded == "it is CMYK");
        CHECK(facts.payload.empty());
        wish.icc = srgb_version_2();
        CHECK_THAT(look_at(write_jpeg(wish, drawing(60, 40, 5))).damage, Contains("another kind of colour"));
    }
}

TEST_CASE("JFIF and EXIF tell the density", "[artwork][jpeg]") {
    const auto density = [](UINT8 unit, UINT16 x, UINT16 y, const Bytes& exif) {
        JpegWish wish;
        wish.exif = exif;
        wish.more = [=](jpeg_compress_struct& jpeg) {
            jpeg.density_unit = unit;
            jpeg.X_density = x;
            jpeg.Y_density = y;
        };
        return look_at(write_jpeg(wish, drawing(40, 30, 4))).density;
    };
    REQUIRE(density(1, 300, 299, {}));
    CHECK(density(1, 300, 299, {})->x == 300);
    CHECK(density(1, 300, 299, {})->y == 299);
    CHECK(density(2, 118, 118, {})->x == Approx(299.72));  // per centimetre
    CHECK_FALSE(density(0, 1, 1, {}));                     // the shape of a pixel only
    CHECK(density(0, 1, 1, tiff(true, 1, 240, 250))->x == 240);
    CHECK(density(0, 1, 1, tiff(true, 1, 240, 250))->y == 250);
    CHECK(density(1, 300, 300, tiff(true, 1, 72, 72))->x == 300);
}

TEST_CASE("ink is told of the upright picture", "[artwork][jpeg][exif]") {
    Pixels pixels = drawing(533, 217, 12);
    for (std::uint32_t y = 0; y < 30; ++y)  // a mark in one corner, so that all eight turns differ
        for (std::uint32_t x = 0; x < 60; ++x) pixels.rgb[(std::size_t{y} * 533 + x) * 3 + 1] = static_cast<std::uint8_t>(x);
    for (int orientation = 1; orientation <= 8; ++orientation)
        for (const bool little : {false, true}) {
            CAPTURE(orientation, little);
            JpegWish wish;
            wish.colour = Wish::grey;
            wish.exif = tiff(little, orientation);
            const Bytes file = write_jpeg(wish, pixels);
            const Facts facts = passed(file);
            CHECK(facts.turn == orientation);
            CHECK(facts.width == 533);
            CHECK(facts.upright_width() == (orientation >= 5 ? 217u : 533u));
            require_same(facts.ink, plain_ink(upright(*decode_jpeg(file), orientation), cell_for(533, 217)));
        }
}

TEST_CASE("what libjpeg warns of is damage", "[artwork][jpeg]") {
    Bytes file = write_jpeg({}, drawing(200, 150, 9));
    CHECK(look_at(file + bytes_of("more")).damage == "");
    Bytes cut(file.begin(), file.begin() + static_cast<std::ptrdiff_t>(file.size() / 2));
    CHECK(look_at(cut).damage == "it is cut off: its end mark (EOI) is missing");
    cut.push_back(std::byte{0xFF});
    cut.push_back(std::byte{0xD9});
    CHECK_THAT(look_at(cut).damage, Contains("its JPEG data are broken"));
    const Bytes no_picture{std::byte{0xFF}, std::byte{0xD8}, std::byte{0xFF}, std::byte{0xD9}};
    CHECK_THAT(look_at(no_picture).damage, Contains("its JPEG data are broken"));
}

TEST_CASE("a JPEG larger than its limits or than its file can hold is refused at its header", "[artwork][jpeg]") {
    Bytes file = write_jpeg({}, drawing(200, 150, 9));
    Limits limits;
    limits.pixels = 200 * 150 - 1;
    CHECK_THAT(look_at(file, limits).damage, Contains("200 x 150 pixels, more than the 29999"));
    for (std::size_t at = 2; at + 9 < file.size(); ++at) {
        if (file[at] != std::byte{0xFF} || file[at + 1] != std::byte{0xC0}) continue;
        for (std::size_t i = 5; i < 9; ++i) file[at + i] = std::byte{0xFE};  // 65278 × 65278
        break;
    }
    CHECK_THAT(look_at(file).damage, Contains("65278 x 65278 pixels"));
    limits.pixels = UINT64_MAX;
    CHECK_THAT(look_at(file, limits).damage, Contains("can hold"));
}

TEST_CASE("a progressive JPEG with hundreds of scans is refused", "[artwork][jpeg]") {
    const auto scans = [](int count) {
        static jpeg_scan_info infos[400];
        JpegWish wish;
        wish.colour = Wish::grey;
        wish.more = [count](jpeg_compress_struct& jpeg) {
            int n = 0;  // the DC once, then coefficients one by one, and their low bits again and again
            infos[n++] = {1, {0}, 0, 0, 0, 0};
            for (int k = 1; k < 64 && n < count; ++k) infos[n++] = {1, {0}, k, k, 0, 10};
            for (int bit = 10; bit > 0; --bit)
                for (int k = 1; k < 64 && n < count; ++k) infos[n++] = {1, {0}, k, k, bit, bit - 1};
            jpeg.scan_info = infos;
            jpeg.num_scans = n;
        };
        return write_jpeg(wish, drawing(64, 64, 4));
    };
    CHECK(look_at(scans(64)).damage == "");
    CHECK_THAT(look_at(scans(300)).damage, Contains("more scans"));
}

TEST_CASE("a disk that fails under libjpeg is a fault, not damage", "[artwork][jpeg]") {
    for (const bool progressive : {false, true}) {
        JpegWish wish;
        wish.progressive = progressive;
        HeldDisk disk(write_jpeg(wish, drawing(900, 700, 9)));
        disk.most_at_once = 64;
        for (std::uint64_t at = 0; at < disk.bytes.size(); at += disk.bytes.size() / 37) {
            disk.fails_from = at;
            CHECK_THROWS_AS(look(disk, "a"), Fault);
        }
    }
}
