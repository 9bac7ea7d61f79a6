// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/picture.h"

#include "artwork/ink_rows.h"
#include "artwork/jpeg_files.h"
#include "artwork/profiles.h"
#include "base/fault.h"

#include <catch2/catch.hpp>
#include <png.h>
#include <zlib.h>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;
using Catch::Matchers::Contains;

namespace {

Bytes read_all(ByteStream& stream, std::size_t portion) {
    Bytes all, piece(portion);
    while (const std::size_t n = stream.read(piece)) all.insert(all.end(), piece.begin(), piece.begin() + static_cast<std::ptrdiff_t>(n));
    CHECK(stream.read(piece) == 0);
    return all;
}

/// What a reader of PDF makes of the picture: the stream as the data of a PNG, decoded by libpng.
Pixels drawn(const Picture& picture, const Bytes& stream) {
    REQUIRE(picture.filter == Picture::Filter::flate_png_rows);
    const int type = !picture.palette.empty() ? 3 : picture.components == 1 ? 0 : 2;
    Bytes file = signature() + ihdr(picture.width, picture.height, picture.bits, type);
    if (type == 3) file = file + chunk("PLTE", picture.palette);
    const auto decoded = decode_png(file + chunk("IDAT", stream) + chunk("IEND", ""));
    REQUIRE(decoded);
    return on_paper(*decoded);
}

Pixels drawn(const Bytes& file, const Facts& facts, std::size_t portion = 1000) {
    HeldDisk disk(file);
    Picture picture = open_picture(disk, "a", facts);
    const Bytes stream = read_all(*picture.samples, portion);
    CHECK(stream.size() == picture.stream_bytes);
    return drawn(picture, stream);
}

void require_same_pixels(const Pixels& a, const Pixels& b) {
    CHECK(a.width == b.width);
    CHECK(a.height == b.height);
    CHECK(a.rgb == b.rgb);
}

std::string fault_of(HeldDisk& disk, const Facts& facts) {
    try {
        Picture picture = open_picture(disk, "art/a.png", facts);
        Bytes bytes(picture.stream_bytes);
        for (std::size_t at = 0; at < bytes.size(); at += picture.samples->read(std::span(bytes).subspan(at))) {
        }
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        CHECK(fault.notes()[0].code == "file-changed");
        CHECK(fault.notes()[0].where.file == "art/a.png");
        return fault.what();
    }
    return "";
}

}  // namespace

TEST_CASE("a PNG is passed through byte for byte", "[artwork][picture]") {
    for (const auto& [type, bits] : {std::pair{0, 1}, {0, 2}, {0, 4}, {0, 8}, {2, 8}, {3, 1}, {3, 2}, {3, 4}, {3, 8}}) {
        PngWish wish;
        wish.type = type;
        wish.bits = bits;
        wish.width = 201;
        wish.idat_bytes = 77;
        const Bytes file = write_png(wish);
        const Facts facts = look_at(file);
        REQUIRE(facts.passage == Passage::through);
        HeldDisk disk(file);
        for (const std::size_t portion : {std::size_t{1}, std::size_t{100}, std::size_t{1} << 20}) {
            disk.most_at_once = portion + 3;
            Picture picture = open_picture(disk, "a", facts);
            CHECK(picture.bits == bits);
            CHECK(picture.components == (type == 2 ? 3 : 1));
            CHECK(picture.palette == facts.palette);
            CHECK_FALSE(picture.inverted_cmyk);
            const Bytes stream = read_all(*picture.samples, portion);
            CHECK(stream.size() == picture.stream_bytes);
            CHECK(sha256_of(stream) == facts.payload_sha256);
            require_same_pixels(drawn(picture, stream), on_paper(*decode_png(file)));
        }
    }
}

TEST_CASE("a JPEG is passed through as the same file", "[artwork][picture]") {
    for (const auto colour : {JpegWish::Colour::grey, JpegWish::Colour::ycc, JpegWish::Colour::rgb}) {
        JpegWish wish;
        wish.colour = colour;
        wish.exif = tiff(false, 8);
        const Bytes file = write_jpeg(wish, drawing(50, 70, 5)) + bytes_of("and more");
        const Facts facts = look_at(file);
        REQUIRE(facts.passage == Passage::through);
        CHECK(facts.turn == 8);
        HeldDisk disk(file);
        Picture picture = open_picture(disk, "a", facts);
        CHECK(picture.filter == Picture::Filter::dct);
        CHECK(picture.width == 50);
        CHECK(picture.height == 70);
        CHECK(picture.components == (colour == JpegWish::Colour::grey ? 1 : 3));
        CHECK(read_all(*picture.samples, 999) == file);
    }
}

TEST_CASE("what cannot pass is recoded to the pixels that a reader sees on white", "[artwork][picture]") {
    for (const int type : {0, 2, 3, 4, 6})
        for (const int bits : {1, 2, 4, 8, 16})
            for (const bool interlaced : {false, true})
                for (const bool transparency : {false, true}) {
                    if (bits < 8 && type != 0 && type != 3) continue;
                    if ((bits == 16 && type == 3) || (transparency && type >= 4)) continue;
                    PngWish wish;
                    wish.type = type;
                    wish.bits = bits;
                    wish.interlaced = interlaced;
                    wish.transparency = transparency;
                    const Bytes file = write_png(wish);
                    const Facts facts = look_at(file);
                    if (facts.passage == Passage::through) continue;
                    CAPTURE(type, bits, interlaced, transparency);
                    HeldDisk disk(file);
                    const Picture picture = open_picture(disk, "a", facts);
                    CHECK(picture.bits == 8);
                    CHECK(picture.components == (type == 2 || type == 6 ? 3 : 1));
                    CHECK(picture.palette.size() == facts.palette.size());
                    require_same_pixels(drawn(file, facts), on_paper(*decode_png(file)));
                }
}

TEST_CASE("what is recoded has the ink that was measured", "[artwork][picture][colour]") {
    for (const int type : {2, 3, 6})
        for (const int bits : {8, 16}) {
            if (type == 3 && bits == 16) continue;
            PngWish wish;
            wish.type = type;
            wish.bits = bits;
            wish.more = [](png_structp png, png_infop info) {
                const Bytes icc = wide_rgb();
                png_set_iCCP(png, info, "any", 0, reinterpret_cast<png_const_bytep>(icc.data()), static_cast<png_uint_32>(icc.size()));
            };
            const Bytes file = write_png(wish);
            const Facts facts = look_at(file);
            REQUIRE(facts.why_recoded.find("not sRGB") != std::string::npos);
            const Pixels pixels = drawn(file, facts);
            require_same(facts.ink, plain_ink(pixels, facts.ink.map.cell));
            CHECK(pixels.rgb != on_paper(*decode_png(file)).rgb);
        }
}

TEST_CASE("a profile changes opaque and half transparent colours alike, and white stays white", "[artwork][picture][colour]") {
    const Bytes iccp = chunk("iCCP", bytes_of(std::string_view("x\0\0", 3)) + packed(wide_rgb()));
    // Three pixels: a green opaque, the same half transparent, white.
    const Bytes row = packed(bytes_of(std::string_view("\0\x40\xc0\x60\xff\x40\xc0\x60\x80\xff\xff\xff\xff", 13)));
    const Bytes file = signature() + ihdr(3, 1, 8, 6) + iccp + chunk("IDAT", row) + chunk("IEND", "");
    const Facts facts = look_at(file);
    REQUIRE(facts.damage == "");
    const Pixels pixels = drawn(file, facts);
    for (std::size_t c = 0; c < 3; ++c) {
        const double opaque = pixels.rgb[c];
        CHECK(std::abs(pixels.rgb[3 + c] - (opaque * 128 + 255 * 127) / 255) <= 1);
        CHECK(pixels.rgb[6 + c] == 255);
    }
    CHECK(pixels.rgb[0] < 0x40);  // a wide green lies outside sRGB
}

TEST_CASE("a JPEG that is recoded is stored upright", "[artwork][picture][exif]") {
    for (int orientation = 1; orientation <= 8; ++orientation) {
        JpegWish wish;
        wish.colour = JpegWish::Colour::rgb;
        wish.adobe_marker = false;
        wish.exif = tiff(true, orientation);
        const Bytes file = write_jpeg(wish, drawing(61, 43, 6));
        const Facts facts = look_at(file);
        REQUIRE(facts.passage == Passage::recoded);
        CAPTURE(orientation);
        const Pixels pixels = drawn(file, facts);
        CHECK(pixels.width == facts.upright_width());
        CHECK(pixels.height == facts.upright_height());
        require_same_pixels(pixels, upright(*decode_jpeg(file), orientation));
        require_same(facts.ink, plain_ink(pixels, facts.ink.map.cell));
    }
}

TEST_CASE("CMYK becomes the colours of its profile, whichever way round it is stored", "[artwork][picture][colour]") {
    const Pixels original = drawing(64, 48, 8);
    for (const bool adobe : {false, true}) {
        JpegWish wish;
        wish.colour = JpegWish::Colour::cmyk;
        wish.quality = 100;
        wish.icc = plain_cmyk();
        wish.adobe_marker = adobe;
        wish.inverted = adobe;
        const Bytes file = write_jpeg(wish, original);
        const Facts facts = look_at(file);
        REQUIRE(facts.damage == "");
        const Pixels pixels = drawn(file, facts);
        std::size_t far = 0;
        for (std::size_t i = 0; i < pixels.rgb.size(); ++i) far += std::abs(pixels.rgb[i] - original.rgb[i]) > 12;
        CHECK(far == 0);
        require_same(facts.ink, plain_ink(pixels, facts.ink.map.cell));
    }
}

TEST_CASE("the same picture is recoded to the same bytes", "[artwork][picture]") {
    PngWish wish;
    wish.type = 6;
    wish.width = 700;
    wish.height = 300;
    const Bytes file = write_png(wish);
    const Facts facts = look_at(file);
    HeldDisk disk(file);
    const Bytes once = read_all(*open_picture(disk, "a", facts).samples, 4096);
    CHECK(once == read_all(*open_picture(disk, "b", look_at(file)).samples, 7));
}

TEST_CASE("a file that changed since it was looked at is a fault", "[artwork][picture]") {
    PngWish wish;
    for (const int type : {2, 6}) {
        wish.type = type;
        const Bytes file = write_png(wish);
        const Facts facts = look_at(file);
        HeldDisk disk(file);
        CHECK(fault_of(disk, facts) == "");
        disk.bytes.push_back(std::byte{0});
        CHECK_THAT(fault_of(disk, facts), Contains("the file changed while"));
        disk.bytes = Bytes(file.begin(), file.end() - 1);
        CHECK_THAT(fault_of(disk, facts), Contains("the file changed while"));
        disk.said_size = file.size();  // it shrinks after it was opened
        disk.bytes.resize(file.size() / 2);
        CHECK_THAT(fault_of(disk, facts), Contains("the file changed while"));
        disk.said_size.reset();
        for (const Found& found : chunks_of(file)) {
            if (found.name != "IDAT") continue;
            disk.bytes = file;
            disk.bytes[found.at + found.length / 2] ^= std::byte{1};
            CHECK_THAT(fault_of(disk, facts), Contains("the file changed while"));
        }
    }
    // Another picture of the same length in its place.
    wish.type = 6;
    const Bytes file = write_png(wish);
    const Facts facts = look_at(file);
    HeldDisk disk(Bytes(file.size()));
    CHECK_THAT(fault_of(disk, facts), Contains("the file changed while"));
}
