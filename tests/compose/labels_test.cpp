// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/callouts.h"
#include "compose/collisions.h"
#include "compose/sample_kit.h"
#include "compose/spread.h"
#include "compose/strip_parts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

TEST_CASE("labels that push each other keep their order and their distance, and stay as near as they can") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(0, 100);
    for (int round = 0; round < 200; ++round) {
        std::vector<Length> wanted(1 + random() % 9);
        for (Length& w : wanted) w = Length::mm(place(random));
        std::sort(wanted.begin(), wanted.end());
        const auto places = spread(wanted, 8_mm, 0_mm, 100_mm);
        REQUIRE(places);
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            CHECK(((*places)[i] >= 0_mm && (*places)[i] <= 100_mm));
            if (i > 0) CHECK((*places)[i] - (*places)[i - 1] >= 8_mm - Length::units(wanted.size()));
        }
    }
    CHECK(*spread({10_mm, 11_mm}, 5_mm, 0_mm, 100_mm) == std::vector<Length>{8_mm, 13_mm});
    CHECK(*spread({1_mm, 2_mm}, 5_mm, 0_mm, 100_mm) == std::vector<Length>{0_mm, 5_mm});
    CHECK(*spread({30_mm, 60_mm}, 5_mm, 0_mm, 100_mm) == std::vector<Length>{30_mm, 60_mm});
    CHECK(!spread({1_mm, 2_mm, 3_mm}, 5_mm, 0_mm, 9_mm));
}

TEST_CASE("callouts never meet, wherever their dots are") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> x(5, 150);
    int drawn = 0;
    for (int round = 0; round < 300; ++round) {
        std::vector<Callout> callouts;
        for (std::size_t i = 0, n = 1 + random() % 7; i < n; ++i)
            callouts.push_back({{Length::mm(x(random)), 150_mm + Length::mm(static_cast<double>(random() % 20))}, "words", std::to_string(random() % 300) + " mm"});
        std::sort(callouts.begin(), callouts.end(), [](auto& a, auto& b) { return a.dot.x < b.dot.x; });
        bool apart = true;  // leaders that fall on each other cannot be told apart by anybody
        for (std::size_t i = 1; i < callouts.size(); ++i) apart = apart && callouts[i].dot.x - callouts[i - 1].dot.x > 1.2_mm;
        if (!apart) continue;
        for (const auto draw : {draw_callouts, draw_keyed_callouts}) {
            Canvas canvas({160_mm, 200_mm}, test::fonts());
            const Rect room{2_mm, 60_mm, 158_mm, 148_mm};
            const auto height = draw(canvas, callouts, room);
            if (!height) continue;
            ++drawn;
            const Page page = std::move(canvas).finish();
            CHECK(collisions(page, test::fonts(), {0_mm, room.top - *height, 160_mm, room.top}).empty());
        }
    }
    CHECK(drawn > 300);
}

TEST_CASE("a long strip comes in few parts that are cut clear of its holes") {
    const std::vector<Length> holes{20_mm, 63_mm, 105_mm};
    for (const Length most : {210_mm, 127_mm, 110_mm, 70_mm, 50_mm}) {
        const auto parts = strip_parts(126_mm, most, holes, 8_mm);
        CAPTURE(most.in_mm());
        CHECK(parts.front().from == 0_mm);
        CHECK(parts.back().to == 126_mm);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            CHECK(parts[i].length() <= most);
            if (i == 0) continue;
            CHECK(parts[i].from == parts[i - 1].to);
            for (const Length hole : holes) CHECK(abs(hole - parts[i].from) >= 8_mm);
        }
    }
    CHECK(strip_parts(126_mm, 126_mm, holes, 8_mm).size() == 1);
    CHECK(strip_parts(126_mm, 110_mm, holes, 8_mm).size() == 2);
}
