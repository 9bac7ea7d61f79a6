// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/colour.h"

#include "artwork/colour_distance.h"
#include "artwork/damage.h"
#include "artwork/jpeg_files.h"
#include "artwork/picture.h"
#include "artwork/profiles.h"
#include "support/shell.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <lcms2.h>
#include <png.h>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;
using Catch::Matchers::Contains;

namespace {

double encode(double light) { return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1 / 2.4) - 0.055; }  // IEC 61966-2-1
int level(double light) { return static_cast<int>(std::lround(255 * encode(std::min(1.0, std::max(0.0, light))))); }

PngWish with_profile(const Bytes& icc, int type = 2) {
    PngWish wish;
    wish.type = type;
    wish.more = [icc](png_structp png, png_infop info) {
        png_set_benign_errors(png, 1);
        png_set_iCCP(png, info, "any", 0, reinterpret_cast<png_const_bytep>(icc.data()), static_cast<png_uint_32>(icc.size()));
    };
    return wish;
}

}  // namespace

TEST_CASE("the sRGB profile never changes and is one", "[artwork][colour]") {
    const auto& bytes = srgb_profile();
    REQUIRE(bytes.size() > 128);
    CHECK(&bytes == &srgb_profile());
    // ICC.1 7.2: bytes 24 to 35 are date and time, 36 to 39 'acsp', 84 to 99 the profile's digest.
    const auto at = [&](std::size_t i) { return std::to_integer<int>(bytes[i]); };
    CHECK(at(24) * 256 + at(25) == 2000);
    CHECK(std::string(reinterpret_cast<const char*>(bytes.data()) + 36, 4) == "acsp");
    for (std::size_t i = 84; i < 100; ++i) CHECK(at(i) == 0);
    CHECK(Profile::read(bytes, Model::rgb).is_srgb());
    cmsHPROFILE opened = cmsOpenProfileFromMem(bytes.data(), static_cast<cmsUInt32Number>(bytes.size()));
    REQUIRE(opened);
    CHECK(cmsIsMatrixShaper(opened));
    cmsCloseProfile(opened);
}

TEST_CASE("whether a profile is sRGB is told by what it does to colours", "[artwork][colour]") {
    CHECK(Profile::read(srgb_version_2(), Model::rgb).is_srgb());
    CHECK(Profile::read(long_srgb(), Model::rgb).is_srgb());  // its name says otherwise
    CHECK_FALSE(Profile::read(wide_rgb(), Model::rgb).is_srgb());
    CHECK(Profile::read(grey_srgb_curve(), Model::grey).is_srgb());
    CHECK_FALSE(Profile::read(grey_gamma(1.8), Model::grey).is_srgb());
    CHECK_FALSE(Profile::read(plain_cmyk(), Model::cmyk).is_srgb());
    CHECK(Profile::read(srgb_version_2(), Model::grey).is_srgb());  // left behind on a picture made grey
    for (int again = 0; again < 2; ++again) CHECK_FALSE(Profile::read(wide_rgb(), Model::rgb).is_srgb());
}

TEST_CASE("profiles that cannot be used are damage", "[artwork][colour]") {
    CHECK_THROWS_AS(Profile::read(bytes_of("no profile"), Model::rgb), Damage);
    CHECK_THROWS_AS(Profile::read(wide_rgb(), Model::grey), Damage);
    CHECK_THROWS_AS(Profile::read(grey_gamma(1.8), Model::rgb), Damage);
    Bytes cut = wide_rgb();
    for (std::size_t length = 0; length < 200; ++length)
        CHECK_THROWS_AS(Profile::read(std::span(cut).first(length), Model::rgb), Damage);
}

TEST_CASE("wide colours become the sRGB colours that the formulas give", "[artwork][colour]") {
    // Adobe RGB (1998) to linear sRGB, both D65; the matrix is worked out from the primaries.
    const double to_srgb[3][3] = {{1.39836, -0.39836, 0}, {0, 1, 0}, {0, -0.04293, 1.04293}};
    const Conversion conversion(Profile::read(wide_rgb(), Model::rgb), {3, false, 1, false});
    for (int r = 0; r < 256; r += 51)
        for (int g = 0; g < 256; g += 51)
            for (int b = 0; b < 256; b += 51) {
                const std::uint8_t in[3] = {static_cast<std::uint8_t>(r), static_cast<std::uint8_t>(g), static_cast<std::uint8_t>(b)};
                std::uint8_t out[3];
                conversion.apply(in, out, 1);
                double light[3];
                for (int c = 0; c < 3; ++c) light[c] = std::pow(in[c] / 255.0, 2.19921875);
                for (int c = 0; c < 3; ++c) {
                    const double linear = to_srgb[c][0] * light[0] + to_srgb[c][1] * light[1] + to_srgb[c][2] * light[2];
                    CAPTURE(r, g, b, c);
                    CHECK(std::abs(out[c] - level(linear)) <= 2);
                }
            }
}

TEST_CASE("greys become the sRGB greys that the formula gives, the darkest too", "[artwork][colour]") {
    // gAMA of PngSuite's pictures; samples are light to that power (PNG specification, 12.8).
    for (const double gamma : {0.35, 0.55, 0.7, 1.0, 2.5}) {
        Primaries primaries;
        primaries.gamma = gamma;
        const Profile profile = Profile::of(primaries, Model::grey);
        const Conversion eight(profile, {1, true, 1, false}), sixteen(profile, {1, false, 2, false});
        CAPTURE(gamma);
        for (int v = 0; v < 256; ++v) {
            const std::uint8_t in[2] = {static_cast<std::uint8_t>(v), static_cast<std::uint8_t>(255 - v)};
            std::uint8_t out[2];
            eight.apply(in, out, 1);
            CHECK(std::abs(out[0] - level(std::pow(v / 255.0, 1 / gamma))) <= 1);
            CHECK(out[1] == in[1]);
            const std::uint16_t wide = static_cast<std::uint16_t>(v * 257);
            std::uint16_t wide_out;
            sixteen.apply(&wide, &wide_out, 1);
            CHECK(std::abs(wide_out / 257.0 - level(std::pow(v / 255.0, 1 / gamma))) <= 1);
        }
    }
}

TEST_CASE("CMYK of a press comes out as its profile means it, where sRGB has the colour", "[artwork][colour]") {
    // The stated profile: default_cmyk.icc of Ghostscript. What it means by each mixture, lcms tells in L*a*b* with doubles
    // and without shortcuts; which of that lies inside sRGB follows from the matrix back to it.
    const auto found = qw::test::run("dpkg -L libgs-common | grep '/default_cmyk[.]icc$'", "/");
    std::ifstream file(found.text.substr(0, found.text.find('\n')), std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(file)), {});
    REQUIRE(text.size() > 1000);
    const Bytes icc = bytes_of(text);
    std::vector<std::uint8_t> inks;
    for (int i = 0; i < 9 * 9 * 9 * 9; ++i)
        for (const int digit : {i / 729, i / 81 % 9, i / 9 % 9, i % 9}) inks.push_back(static_cast<std::uint8_t>(digit * 255 / 8));
    const std::size_t count = inks.size() / 4;
    std::vector<cmsCIELab> meant(count);
    cmsHPROFILE profile = cmsOpenProfileFromMem(icc.data(), static_cast<cmsUInt32Number>(icc.size())), lab = cmsCreateLab4Profile(nullptr);
    cmsHTRANSFORM transform = cmsCreateTransform(profile, TYPE_CMYK_8, lab, TYPE_Lab_DBL, INTENT_RELATIVE_COLORIMETRIC,
                                                 cmsFLAGS_BLACKPOINTCOMPENSATION | cmsFLAGS_NOOPTIMIZE);
    REQUIRE(transform);
    cmsDoTransform(transform, inks.data(), meant.data(), static_cast<cmsUInt32Number>(count));
    cmsDeleteTransform(transform);
    cmsCloseProfile(lab);
    cmsCloseProfile(profile);

    std::vector<std::uint8_t> rgb(count * 3);
    Conversion(Profile::read(icc, Model::cmyk), {4, false, 1, false}).apply(inks.data(), rgb.data(), static_cast<std::uint32_t>(count));
    // XYZ under D50 to the light of sRGB: the inverse of the matrix that colour_distance.cpp has (derived).
    const double back[3][3] = {{3.1338561, -1.6168667, -0.4906146}, {-0.9787684, 1.9161415, 0.0334540}, {0.0719453, -0.2289914, 1.4052427}};
    std::size_t inside = 0;
    double farthest = 0, sum = 0;
    for (std::size_t i = 0; i < count; ++i) {
        cmsCIEXYZ xyz;
        const cmsCIEXYZ white{0.96422, 1, 0.82521};
        cmsLab2XYZ(&white, &xyz, &meant[i]);
        bool in_srgb = true;
        for (const auto& row : back) {
            const double light = row[0] * xyz.X + row[1] * xyz.Y + row[2] * xyz.Z;
            in_srgb = in_srgb && light > 0.002 && light < 0.998;
        }
        if (!in_srgb) continue;
        ++inside;
        const double apart = ciede2000({meant[i].L, meant[i].a, meant[i].b}, lab_of_srgb(rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2]));
        farthest = std::max(farthest, apart);
        sum += apart;
    }
    CHECK(inside > count / 3);
    CHECK(sum / static_cast<double>(inside) < 0.4);
    CHECK(farthest < 1.5);
}

TEST_CASE("CMYK is converted by its profile, inverted or not", "[artwork][colour]") {
    const Profile profile = Profile::read(plain_cmyk(), Model::cmyk);
    const Conversion plain(profile, {4, false, 1, false}), inverted(profile, {4, false, 1, true});
    for (const auto& ink : {std::vector<std::uint8_t>{0, 0, 0, 0}, {255, 0, 0, 0}, {0, 255, 255, 0}, {0, 0, 0, 255}, {30, 90, 10, 60}}) {
        std::uint8_t out[3], back[3];
        plain.apply(ink.data(), out, 1);
        std::vector<std::uint8_t> reversed;
        for (const std::uint8_t c : ink) reversed.push_back(static_cast<std::uint8_t>(255 - c));
        inverted.apply(reversed.data(), back, 1);
        for (std::size_t c = 0; c < 3; ++c) {
            CHECK(std::abs(out[c] - std::lround((255 - ink[c]) * (255 - ink[3]) / 255.0)) <= 4);
            CHECK(out[c] == back[c]);
        }
    }
}

TEST_CASE("a PNG's profile decides its passage", "[artwork][colour][png]") {
    Facts facts = look_at(write_png(with_profile(srgb_version_2())));
    CHECK(facts.damage == "");
    CHECK(facts.profile);
    CHECK(facts.profile_is_srgb);
    CHECK(facts.passage == Passage::through);
    facts = look_at(write_png(with_profile(wide_rgb())));
    CHECK(facts.damage == "");
    CHECK(facts.profile);
    CHECK_FALSE(facts.profile_is_srgb);
    CHECK(facts.why_recoded == "its colours are not sRGB");
    facts = look_at(write_png(with_profile(grey_gamma(1.8), 0)));
    CHECK(facts.why_recoded == "its colours are not sRGB");
    facts = look_at(write_png(with_profile(grey_srgb_curve(), 0)));
    CHECK(facts.passage == Passage::through);
    facts = look_at(write_png(with_profile(wide_rgb(), 3)));
    CHECK(facts.why_recoded == "its colours are not sRGB");
}

TEST_CASE("gAMA, cHRM, sRGB and cICP say what colours mean, in their order", "[artwork][colour][png]") {
    const auto facts = [](auto more) {
        PngWish wish;
        wish.more = more;
        return look_at(write_png(wish));
    };
    Facts seen = facts([](png_structp png, png_infop info) { png_set_gAMA_fixed(png, info, 45455); });
    CHECK(seen.passage == Passage::through);
    CHECK_FALSE(seen.profile);
    seen = facts([](png_structp png, png_infop info) { png_set_gAMA_fixed(png, info, 100000); });
    CHECK(seen.why_recoded == "its colours are not sRGB");
    CHECK(seen.profile);
    seen = facts([](png_structp png, png_infop info) { png_set_cHRM_fixed(png, info, 31270, 32900, 64000, 33000, 30000, 60000, 15000, 6000); });
    CHECK(seen.passage == Passage::through);
    seen = facts([](png_structp png, png_infop info) { png_set_cHRM_fixed(png, info, 31270, 32900, 64000, 33000, 21000, 71000, 15000, 6000); });
    CHECK(seen.why_recoded == "its colours are not sRGB");
    seen = facts([](png_structp png, png_infop info) { png_set_sRGB(png, info, PNG_sRGB_INTENT_PERCEPTUAL); });
    CHECK(seen.passage == Passage::through);
    CHECK(seen.profile_is_srgb);

    const auto with = [](const Bytes& between) {
        return look_at(signature() + ihdr(1, 1, 8, 2) + between + chunk("IDAT", packed(bytes_of(std::string_view("\0abc", 4)))) + chunk("IEND", ""));
    };
    const Bytes linear = chunk("gAMA", std::string_view("\0\1\x86\xa0", 4));
    CHECK(with(linear).passage == Passage::recoded);
    CHECK(with(linear + chunk("sRGB", std::string_view("\0", 1))).passage == Passage::through);
    CHECK(with(chunk("cICP", "\1\x0d") + linear).damage == "");  // too short to count
    CHECK(with(chunk("cICP", std::string_view("\1\x0d\0\1", 4)) + linear).passage == Passage::through);
    CHECK(with(chunk("cICP", std::string_view("\x09\x10\0\1", 4))).damage == "its colour space (cICP 9/16/0/1) cannot be converted; it needs a profile or sRGB");
    CHECK(with(chunk("cHRM", Bytes(32))).damage == "its white point and primaries (cHRM) are no colours");
}

TEST_CASE("a PNG's profile that is broken is damage", "[artwork][colour][png]") {
    const auto damage = [](const Bytes& iccp) {
        return look_at(signature() + ihdr(1, 1, 8, 2) + chunk("iCCP", iccp) + chunk("IDAT", packed(bytes_of(std::string_view("\0abc", 4)))) +
                       chunk("IEND", ""))
            .damage;
    };
    const Bytes name = bytes_of(std::string_view("x\0\0", 3));
    CHECK(damage(name + packed(srgb_version_2())) == "");
    CHECK(damage(name + packed(bytes_of("nonsense"))) == "its colour profile cannot be read");
    Bytes cut = name + packed(srgb_version_2());
    cut.resize(cut.size() - 9);
    CHECK_THAT(damage(cut), Contains("cut off"));
    CHECK_THAT(damage(name + bytes_of("nonsense")), Contains("cannot be unpacked"));
    CHECK_THAT(damage(bytes_of(std::string_view("x\0\1", 3)) + packed(srgb_version_2())), Contains("not stored as PNG wants it"));
    CHECK_THAT(damage(bytes_of(std::string(90, 'x'))), Contains("not stored as PNG wants it"));
    CHECK_THAT(damage({}), Contains("not stored as PNG wants it"));
    CHECK_THAT(damage(name + packed(Bytes(20 << 20), 9)), Contains("larger than 16 MiB"));
}

TEST_CASE("a JPEG's profile may lie in several segments", "[artwork][colour][jpeg]") {
    JpegWish wish;
    wish.icc = long_srgb();
    REQUIRE(wish.icc.size() > 2 * 65535);
    const Bytes file = write_jpeg(wish, drawing(60, 40, 5));
    Facts facts = look_at(file);
    CHECK(facts.damage == "");
    CHECK(facts.profile);
    CHECK(facts.profile_is_srgb);
    CHECK(facts.passage == Passage::through);

    Bytes lacking = file;  // the second segment under another name
    const std::string text(reinterpret_cast<const char*>(file.data()), file.size());
    const std::size_t first = text.find("ICC_PROFILE");
    lacking[text.find("ICC_PROFILE", first + 1)] = std::byte{'X'};
    CHECK_THAT(look_at(lacking).damage, Contains("its JPEG data are broken"));

    wish.icc = wide_rgb();
    facts = look_at(write_jpeg(wish, drawing(60, 40, 5)));
    CHECK(facts.damage == "");
    CHECK(facts.why_recoded == "its colours are not sRGB");
    CHECK_FALSE(facts.profile_is_srgb);
    wish.icc = bytes_of("nonsense");
    CHECK(look_at(write_jpeg(wish, drawing(60, 40, 5))).damage == "its colour profile cannot be read");
    wish.colour = JpegWish::Colour::grey;
    wish.icc = grey_gamma(1.8);
    CHECK(look_at(write_jpeg(wish, drawing(60, 40, 5))).why_recoded == "its colours are not sRGB");
}
