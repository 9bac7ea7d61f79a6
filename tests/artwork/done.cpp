// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/done.h"

#include "artwork/colour_distance.h"
#include "artwork/jpeg_files.h"
#include "artwork/profiles.h"

#include <catch2/catch.hpp>
#include <png.h>

using namespace qw::artwork;
using namespace qw::artwork::test;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

std::string done_to_png(const PngWish& wish) { return done_to(look_at(write_png(wish))); }
std::string done_to_jpeg(const JpegWish& wish) { return done_to(look_at(write_jpeg(wish, drawing(60, 40, 5)))); }

PngWish with_profile(PngWish wish, const Bytes& icc) {
    wish.more = [icc](png_structp png, png_infop info) {
        png_set_iCCP(png, info, "any", 0, reinterpret_cast<png_const_bytep>(icc.data()), static_cast<png_uint_32>(icc.size()));
    };
    return wish;
}

}  // namespace

TEST_CASE("what is done to a picture is told in words", "[artwork][done]") {
    PngWish wish;
    CHECK(done_to_png(wish) == "passed through");
    CHECK(done_to_png(with_profile(wish, srgb_version_2())) == "passed through");
    wish.interlaced = true;
    CHECK(done_to_png(wish) == "put in the order of its rows and packed again");
    wish = {};
    wish.type = 6;
    CHECK(done_to_png(wish) == "flattened on white and packed again");
    wish.bits = 16;
    CHECK(done_to_png(wish) == "flattened on white, rounded from 16 bits to 8 and packed again");
    CHECK_THAT(done_to_png(with_profile(wish, display_p3())), StartsWith("converted from Display P3 to sRGB (colours that sRGB lacks move by up to "));
    wish = {};
    wish.more = [](png_structp png, png_infop info) { png_set_gAMA_fixed(png, info, 55000); };
    CHECK(done_to_png(wish) == "converted from the gamma and primaries that it states to sRGB and packed again");
}

TEST_CASE("what is done to a JPEG is told in words", "[artwork][done]") {
    JpegWish wish;
    CHECK(done_to_jpeg(wish) == "passed through");
    wish.exif = tiff(true, 6);
    CHECK(done_to_jpeg(wish) == "passed through, turned by its EXIF orientation 6 in the matrix");
    wish.icc = display_p3();
    CHECK_THAT(done_to_jpeg(wish), StartsWith("converted from Display P3 to sRGB") && Contains("CIEDE2000), turned by its EXIF orientation 6 and packed again"));
    wish = {};
    wish.colour = JpegWish::Colour::cmyk;
    CHECK(done_to_jpeg(wish) == "");  // damaged: it has no profile
    wish.icc = plain_cmyk();
    CHECK(done_to_jpeg(wish) == "converted from a profile without a name to sRGB and packed again");
    wish = {};
    wish.arithmetic = true;
    CHECK(done_to_jpeg(wish) == "packed again");
}

TEST_CASE("how far colours move is that of colours which sRGB does not have", "[artwork][done][colour]") {
    CHECK(Profile::read(srgb_version_2(), Model::rgb).farthest_move() < 1.2);
    CHECK(Profile::read(grey_gamma(1.8), Model::grey).farthest_move() < 1.2);
    // Display P3's own green is outside sRGB: what is left of it is sRGB's green, (0, 255, 0). Its L*a*b* under D50 from the
    // primaries and white of P3 and Bradford's adaptation (derived).
    const Lab green{86.6147, -106.5504, 102.8732};
    const double lost = ciede2000(green, lab_of_srgb(0, 255, 0)), farthest = Profile::read(display_p3(), Model::rgb).farthest_move();
    CHECK(lost > 3);
    CHECK(farthest > lost - 0.2);
    CHECK(farthest < 20);
    CHECK(Profile::read(display_p3(), Model::rgb).name() == "Display P3");
    CHECK(Profile::read(long_srgb(), Model::rgb).name() == std::string(60, 'x'));  // 75,000 of them
    // Every colour of this profile is one of sRGB; its table of 17 steps a side is not exact.
    CHECK(Profile::read(plain_cmyk(), Model::cmyk).farthest_move() < 3);
}
