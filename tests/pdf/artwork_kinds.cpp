// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of PNG and JPEG, drawn and rendered again: what poppler shows is what libpng and libjpeg-turbo decode.
#include "artwork/colour_distance.h"
#include "artwork/jpeg_files.h"
#include "artwork/profiles.h"
#include "compose/placement.h"
#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "support/fault_disk.h"
#include "support/png_suite.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <optional>

using namespace qw;
using namespace qw::test;
using artwork::test::Bytes;
using artwork::test::JpegWish;
using Wanted = artwork::test::Pixels;

namespace {

/// One picture and what it looks like upright on white paper.
struct Shown {
    std::string name;
    Bytes file;
    Wanted wanted;
};

constexpr double wall_dpi = 100;
constexpr std::uint32_t each_pixel = 6;       // below 4, poppler shows values between the pixels'
constexpr std::uint32_t page_pixels = 2400;

Length pixels_long(std::uint32_t count) { return Length::inches(count / wall_dpi); }

/// Lays pictures in rows from the upper left, each of their pixels so many of the page's.
class Wall {
public:
    Wall(Disk& disk, const TestFolder& folder) : disk_(disk), folder_(folder), document_(one_page(paper())) {}

    void hang(const Shown& shown) {
        const std::uint32_t width = shown.wanted.width * each_pixel, height = shown.wanted.height * each_pixel;
        if (x_ + width > page_pixels) x_ = 0, y_ += row_, row_ = 0;
        if (y_ + height > page_pixels) {
            document_.pages.push_back(one_page(paper()).pages[0]);
            x_ = y_ = row_ = 0;
        }
        const Path file = folder_ / shown.name;
        std::ofstream(file, std::ios::binary).write(reinterpret_cast<const char*>(shown.file.data()), static_cast<std::streamsize>(shown.file.size()));
        place(file, Rect::at({pixels_long(x_), paper().height - pixels_long(y_ + height)}, {pixels_long(width), pixels_long(height)}));
        hung_.push_back({&shown, document_.pages.size(), x_, y_});
        x_ += width;
        row_ = std::max(row_, height);
    }

    /// The largest difference to what is wanted, over all samples of each picture.
    template <typename Judge>
    void judge(Judge judge_one) {
        pdf::draw(disk_, folder_ / "wall.pdf", document_, drawing_fonts());
        check_sound(folder_ / "wall.pdf");
        must_run("pdftoppm -r 100 " + quoted(folder_ / "wall.pdf") + " " + quoted(folder_ / "page"));
        std::vector<Pixels> pages;
        for (std::size_t i = 1; i <= document_.pages.size(); ++i) pages.push_back(read_ppm(folder_ / ("page-" + std::to_string(i) + ".ppm")));
        for (const Hung& hung : hung_) judge_one(*hung.shown, taken_down(pages[hung.page - 1], hung));
    }

    const artwork::Facts& facts(std::size_t i) const { return document_.artwork[i].facts; }

private:
    struct Hung {
        const Shown* shown;
        std::size_t page;
        std::uint32_t x, y;
    };
    static Size paper() { return {pixels_long(page_pixels), pixels_long(page_pixels)}; }

    /// As the program places a picture that fills a rectangle.
    void place(const Path& file, const Rect& where) {
        place_picture(disk_, document_, document_.pages.size() - 1, file, where);
        const artwork::Facts& facts = document_.artwork.back().facts;
        auto& picture = std::get<compose::Picture>(document_.pages.back().items.back());
        picture.place = picture.place.after(compose::turned_upright(facts.passage == artwork::Passage::through ? facts.turn : 1));
    }

    static Wanted taken_down(const Pixels& page, const Hung& hung) {
        Wanted seen{hung.shown->wanted.width, hung.shown->wanted.height, {}};
        for (std::uint32_t y = 0; y < seen.height; ++y)
            for (std::uint32_t x = 0; x < seen.width; ++x) {
                const std::uint8_t* p = page.at(hung.x + x * each_pixel + each_pixel / 2, hung.y + y * each_pixel + each_pixel / 2);
                seen.rgb.insert(seen.rgb.end(), p, p + 3);
            }
        return seen;
    }

    Disk& disk_;
    const TestFolder& folder_;
    compose::Document document_;
    std::vector<Hung> hung_;
    std::uint32_t x_ = 0, y_ = 0, row_ = 0;
};

int largest_difference(const Wanted& a, const Wanted& b) {
    int largest = 0;
    for (std::size_t i = 0; i < a.rgb.size(); ++i) largest = std::max(largest, std::abs(a.rgb[i] - b.rgb[i]));
    return largest;
}

void check_within(const std::vector<Shown>& all, int levels) {
    const auto disk = real_disk();
    const TestFolder folder;
    Wall wall(*disk, folder);
    for (const Shown& shown : all) wall.hang(shown);
    wall.judge([&](const Shown& shown, const Wanted& seen) {
        INFO(shown.name);
        CHECK(seen.rgb.size() == shown.wanted.rgb.size());
        CHECK(largest_difference(seen, shown.wanted) <= levels);
    });
}

/// What the file's gAMA says, 1 when its samples are light itself; nothing when there is none or it is sRGB's.
std::optional<double> gamma_of(const Bytes& file) {
    for (const auto& found : artwork::test::chunks_of(file)) {
        if (found.name != "gAMA") continue;
        std::uint32_t value = 0;
        for (std::size_t i = 0; i < 4; ++i) value = value << 8 | std::to_integer<std::uint32_t>(file[found.at + i]);
        if (value != 45000 && value != 45455) return value / 1e5;
    }
    return std::nullopt;
}

/// The sRGB sample (IEC 61966-2-1) of one that is light to the power of gamma (PNG specification, 12.8).
std::uint16_t as_srgb(std::uint16_t sample, double gamma) {
    const double light = std::pow(sample / 65535.0, 1 / gamma);
    const double value = light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
    return static_cast<std::uint16_t>(std::lround(65535 * value));
}

/// libpng's samples, brought to sRGB by the formula, laid on white by libpng's alpha.
Wanted on_white(const Bytes& file) {
    auto decoded = artwork::test::decode_png(file);
    REQUIRE(decoded);
    if (const auto gamma = gamma_of(file)) {
        std::map<std::uint16_t, std::uint16_t> told;  // the formula is slow, and pictures repeat their samples
        for (std::size_t i = 0; i < decoded->rgba.size(); ++i) {
            if (i % 4 == 3) continue;
            const auto [known, is_new] = told.try_emplace(decoded->rgba[i]);
            if (is_new) known->second = as_srgb(known->first, *gamma);
            decoded->rgba[i] = known->second;
        }
    }
    return artwork::test::on_paper(*decoded);
}

Bytes without_gamma(const Bytes& file) {
    Bytes kept = artwork::test::signature();
    using artwork::test::operator+;
    for (const auto& found : artwork::test::chunks_of(file))
        if (found.name != "gAMA")
            kept = kept + Bytes(file.begin() + static_cast<std::ptrdiff_t>(found.at - 8), file.begin() + static_cast<std::ptrdiff_t>(found.at + found.length + 4));
    return kept;
}

std::string jpeg_name(const JpegWish& wish) {
    static int count = 0;
    return std::to_string(++count) + (wish.progressive ? "-progressive" : "-baseline") + ".jpg";
}

Shown shown_jpeg(const JpegWish& wish, int orientation = 1) {
    const Bytes file = artwork::test::write_jpeg(wish, artwork::test::drawing(44, 28, 3));
    const auto decoded = artwork::test::decode_jpeg(file);
    REQUIRE(decoded);
    return {jpeg_name(wish), file, artwork::test::upright(*decoded, orientation)};
}

artwork::Lab lab_at(const Wanted& pixels, std::size_t i) { return artwork::lab_of_srgb(pixels.rgb[3 * i], pixels.rgb[3 * i + 1], pixels.rgb[3 * i + 2]); }

}  // namespace

TEST_CASE("PngSuite comes out of the PDF as libpng decodes it", "[suite][many]") {
    std::vector<Shown> with_gamma, plain;
    for (const SuitePicture& picture : png_suite()) {
        if (picture.damaged()) continue;
        with_gamma.push_back({picture.name + ".png", picture.bytes, on_white(picture.bytes)});
        const Bytes file = without_gamma(picture.bytes);
        plain.push_back({picture.name + "-plain.png", file, on_white(file)});
    }
    REQUIRE(with_gamma.size() >= 160);
    check_within(with_gamma, 2);
    check_within(plain, 1);
}

TEST_CASE("JPEG of every kind comes out of the PDF as libjpeg-turbo decodes it") {
    std::vector<Shown> all;
    for (const auto colour : {JpegWish::Colour::grey, JpegWish::Colour::ycc, JpegWish::Colour::rgb})
        for (const bool progressive : {false, true})
            for (const bool marked : {true, false}) {
                JpegWish wish;
                wish.colour = colour;
                wish.progressive = progressive;
                wish.adobe_marker = marked;
                all.push_back(shown_jpeg(wish));
            }
    for (const auto& [across, down] : {std::pair{1, 1}, {2, 1}, {1, 2}}) {
        JpegWish wish;
        wish.across = across;
        wish.down = down;
        all.push_back(shown_jpeg(wish));
    }
    JpegWish arithmetic;
    arithmetic.arithmetic = true;
    all.push_back(shown_jpeg(arithmetic));
    JpegWish profiled;
    profiled.icc = artwork::test::long_srgb();  // in three segments
    all.push_back(shown_jpeg(profiled));
    check_within(all, 2);
}

TEST_CASE("the eight EXIF orientations come out of the PDF upright, passed through and packed again") {
    std::vector<Shown> all;
    for (int orientation = 1; orientation <= 8; ++orientation)
        for (const bool arithmetic : {false, true}) {
            JpegWish wish;
            wish.exif = artwork::test::tiff(orientation % 2 == 0, orientation);
            wish.arithmetic = arithmetic;
            all.push_back(shown_jpeg(wish, orientation));
        }
    check_within(all, 2);
}

TEST_CASE("CMYK comes out of the PDF in the colours of its profile", "[many]") {
    // The stated profile is one made for the test: the light that four inks leave of white paper is (1 - C)(1 - K) … of
    // the sRGB samples, so that what is wanted follows from the decoded samples alone.
    std::vector<Shown> all;
    for (const auto colour : {JpegWish::Colour::cmyk, JpegWish::Colour::ycck})
        for (const bool progressive : {false, true})
            for (const bool marked : {true, false}) {
                if (!marked && colour == JpegWish::Colour::ycck) continue;  // four components without a marker are CMYK
                JpegWish wish;
                wish.colour = colour;
                wish.progressive = progressive;
                wish.adobe_marker = wish.inverted = marked;
                wish.black = 40;
                wish.icc = artwork::test::plain_cmyk();
                const Bytes file = artwork::test::write_jpeg(wish, artwork::test::drawing(44, 28, 3));
                const auto ink = artwork::test::decode_cmyk(file);
                REQUIRE(ink);
                Wanted wanted{44, 28, {}};
                for (std::size_t i = 0; i < ink->size(); i += 4)
                    for (std::size_t c = 0; c < 3; ++c)
                        wanted.rgb.push_back(static_cast<std::uint8_t>(std::lround((255 - (*ink)[i + c]) * (255 - (*ink)[i + 3]) / 255.0)));
                all.push_back({jpeg_name(wish), file, wanted});
            }
    const auto disk = real_disk();
    const TestFolder folder;
    Wall wall(*disk, folder);
    for (const Shown& shown : all) wall.hang(shown);
    wall.judge([](const Shown& shown, const Wanted& seen) {
        INFO(shown.name);
        double farthest = 0;
        for (std::size_t i = 0; 3 * i < seen.rgb.size(); ++i) farthest = std::max(farthest, artwork::ciede2000(lab_at(seen, i), lab_at(shown.wanted, i)));
        CHECK(farthest < 1);
    });
}
