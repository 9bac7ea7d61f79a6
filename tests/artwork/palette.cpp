// SPDX-License-Identifier: GPL-3.0-or-later
// Main colours of pictures: right for pictures whose groups are plain to see, as good as the best of all divisions for
// small ones, and the same each time. The pixels are made here.
#include "artwork/palette.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <functional>
#include <random>

using namespace qw;

namespace {

using Samples = std::vector<std::uint8_t>;

void add_colour(Samples& pixels, int times, std::array<std::uint8_t, 3> colour) {
    for (int i = 0; i < times; ++i) pixels.insert(pixels.end(), colour.begin(), colour.end());
}

double squared_distance(const artwork::Lab& a, const artwork::Lab& b) { return (a.l - b.l) * (a.l - b.l) + (a.a - b.a) * (a.a - b.a) + (a.b - b.b) * (a.b - b.b); }

/// Sum of squared distances of the groups' members from their means, in CIELAB.
double spread(const std::vector<artwork::Lab>& colours, const std::vector<std::size_t>& group, std::size_t groups) {
    double sum = 0;
    for (std::size_t g = 0; g < groups; ++g) {
        artwork::Lab mean;
        double members = 0;
        for (std::size_t i = 0; i < colours.size(); ++i)
            if (group[i] == g) mean = {mean.l + colours[i].l, mean.a + colours[i].a, mean.b + colours[i].b}, ++members;
        if (members == 0) continue;
        mean = {mean.l / members, mean.a / members, mean.b / members};
        for (std::size_t i = 0; i < colours.size(); ++i)
            if (group[i] == g) sum += squared_distance(colours[i], mean);
    }
    return sum;
}

/// The least spread of all ways to divide the colours into so many groups.
double least_spread(const std::vector<artwork::Lab>& colours, std::size_t groups) {
    double least = 1e300;
    std::vector<std::size_t> group(colours.size());
    const std::function<void(std::size_t)> divide = [&](std::size_t i) {
        if (i == colours.size()) {
            least = std::min(least, spread(colours, group, groups));
            return;
        }
        for (group[i] = 0; group[i] < groups; ++group[i]) divide(i + 1);
        group[i] = 0;
    };
    divide(0);
    return least;
}

}  // namespace

TEST_CASE("four flat colours are found with their shares, largest first; white paper is left out") {
    Samples pixels;
    add_colour(pixels, 500, {255, 255, 255});
    add_colour(pixels, 50, {200, 30, 30});
    add_colour(pixels, 30, {20, 120, 40});
    add_colour(pixels, 15, {30, 40, 160});
    add_colour(pixels, 5, {0, 0, 0});
    const auto palette = artwork::palette_of(pixels, 6);
    REQUIRE(palette.size() == 4);
    CHECK(palette[0].red == 200);
    CHECK(palette[0].share == Approx(0.5));
    CHECK(palette[1].green == 120);
    CHECK(palette[1].share == Approx(0.3));
    CHECK(palette[2].blue == 160);
    CHECK(palette[3].share == Approx(0.05));
}

TEST_CASE("a blank page has no colours, one colour stays one") {
    Samples white, grey;
    add_colour(white, 100, {255, 255, 255});
    add_colour(white, 100, {249, 249, 249});
    add_colour(grey, 100, {120, 120, 120});
    CHECK(artwork::palette_of(white, 6).empty());
    CHECK(artwork::palette_of({}, 6).empty());
    CHECK(artwork::palette_of(grey, 0).empty());
    REQUIRE(artwork::palette_of(grey, 6).size() == 1);
    CHECK(artwork::palette_of(grey, 6).front().share == 1);
}

TEST_CASE("colours of small pictures are divided as well as the best of all divisions, but for a few in a hundred") {
    std::mt19937 random(7);
    int worse = 0;
    for (int round = 0; round < 60; ++round) {
        Samples pixels;
        std::vector<artwork::Lab> colours;
        for (int i = 0; i < 8; ++i) {
            const auto level = [&] { return static_cast<std::uint8_t>(random() % 240); };
            const std::array<std::uint8_t, 3> colour{level(), level(), level()};
            add_colour(pixels, 1, colour);
            colours.push_back(artwork::lab_of_srgb(colour[0], colour[1], colour[2]));
        }
        const auto palette = artwork::palette_of(pixels, 3);
        std::vector<std::size_t> group(colours.size());
        for (std::size_t i = 0; i < colours.size(); ++i)
            for (std::size_t s = 1; s < palette.size(); ++s)
                if (squared_distance(colours[i], palette[s].lab()) < squared_distance(colours[i], palette[group[i]].lab())) group[i] = s;
        const double found = spread(colours, group, 3), best = least_spread(colours, 3);
        CHECK(found <= 2.5 * best);
        if (found > 1.1 * best) ++worse;
    }
    CHECK(worse <= 20);
}

TEST_CASE("the order of the pixels does not matter") {
    std::mt19937 random(11);
    std::vector<std::array<std::uint8_t, 3>> colours;
    for (int i = 0; i < 2000; ++i)
        colours.push_back({static_cast<std::uint8_t>(random()), static_cast<std::uint8_t>(random()), static_cast<std::uint8_t>(random())});
    const auto palette_of = [&] {
        Samples pixels;
        for (const auto& colour : colours) add_colour(pixels, 1, colour);
        return artwork::palette_of(pixels, 6);
    };
    const auto one = palette_of();
    std::shuffle(colours.begin(), colours.end(), random);
    const auto other = palette_of();
    REQUIRE(one.size() == other.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
        CHECK(one[i].red == other[i].red);
        CHECK(one[i].green == other[i].green);
        CHECK(one[i].blue == other[i].blue);
        CHECK(one[i].share == other[i].share);
    }
}
