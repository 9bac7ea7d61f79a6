// SPDX-License-Identifier: GPL-3.0-or-later
// The judge tries every choice of sheets.
#include "checks/fewest_sheets.h"

#include <catch2/catch.hpp>

#include <bit>
#include <cstdint>
#include <optional>
#include <random>

using namespace qw::checks;

namespace {

using Choice = std::vector<std::size_t>;

/// All choices of at most 12 sheets, the shortest and of those the earliest.
Choice by_trying(const std::vector<Shows>& sheets) {
    std::vector<std::uint64_t> risks;
    std::uint64_t all = 0;
    for (const Shows& shows : sheets) {
        std::uint64_t bits = 0;
        for (const std::size_t risk : shows) bits |= std::uint64_t{1} << risk;
        risks.push_back(bits);
        all |= bits;
    }
    std::optional<Choice> best;
    for (unsigned set = 0; set < 1u << sheets.size(); ++set) {
        std::uint64_t shown = 0;
        Choice choice;
        for (std::size_t i = 0; i < sheets.size(); ++i)
            if (set >> i & 1) shown |= risks[i], choice.push_back(i);
        if (shown != all) continue;
        if (!best || choice.size() < best->size() || (choice.size() == best->size() && choice < *best)) best = choice;
    }
    return *best;
}

}  // namespace

TEST_CASE("No sheets, no risks, and risks that no sheet shows") {
    CHECK(fewest_sheets({}, 0).empty());
    CHECK(fewest_sheets({}, 3).empty());
    CHECK(fewest_sheets({{}, {}}, 1).empty());
    CHECK(fewest_sheets({{}, {2}}, 3) == Choice{1});
    CHECK(unshown({{}, {2}}, 3) == Choice{0, 1});
}

TEST_CASE("Where the greedy answer takes three sheets, two are found") {
    // The first shows most, but then two are needed beside it.
    CHECK(fewest_sheets({{0, 1, 2, 3}, {0, 2, 4}, {1, 3, 5}}, 6) == Choice{1, 2});
}

TEST_CASE("Of answers as short the earliest is taken") {
    CHECK(fewest_sheets({{0}, {0, 1}, {0, 1}, {2}, {2}}, 3) == Choice{1, 3});
    // A later sheet that shows more does not go before an earlier one that suffices.
    CHECK(fewest_sheets({{0}, {1, 2}, {0, 1}}, 3) == Choice{0, 1});
}

TEST_CASE("Random cases agree with trying every choice") {
    std::minstd_rand random(20261201);
    for (int round = 0; round < 3000; ++round) {
        const std::size_t risks = 1 + random() % 10, sheets = 1 + random() % 9;
        const std::size_t likely = 1 + random() % 6;
        std::vector<Shows> all(sheets);
        for (Shows& shows : all)
            for (std::size_t risk = 0; risk < risks; ++risk)
                if (random() % 7 < likely) shows.push_back(risk);
        REQUIRE(fewest_sheets(all, risks) == by_trying(all));
    }
}

TEST_CASE("More risks than one word holds, and more sheets than a kit has") {
    // 300 sheets, of which each tenth shows what nine others show one by one; 100 risks.
    std::vector<Shows> all;
    for (std::size_t i = 0; i < 300; ++i)
        all.push_back(i % 10 == 9 && i < 100 ? Shows{i - 9, i - 8, i - 7, i - 6, i - 5, i - 4, i - 3, i - 2, i - 1, i} : Shows{i % 100});
    const Choice chosen = fewest_sheets(all, 100);
    REQUIRE(chosen.size() == 10);
    for (std::size_t i = 0; i < 10; ++i) CHECK(chosen[i] == i * 10 + 9);
}
