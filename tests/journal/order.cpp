// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/order.h"

#include "journal/example.h"

#include <random>

using namespace qw;
using namespace qw::example;
using formulas::order_of;

TEST_CASE("what is used comes first, otherwise the order stays") {
    CHECK(order_of({}).order.empty());
    CHECK(order_of({{}, {}, {}}).order == std::vector<std::size_t>{0, 1, 2});
    CHECK(order_of({{1}, {2}, {}}).order == std::vector<std::size_t>{2, 1, 0});
    CHECK(order_of({{1}, {2}, {}}).cycles.empty());
}

TEST_CASE("cycles are told with their members") {
    CHECK(order_of({{0}}).cycles == std::vector<std::vector<std::size_t>>{{0, 0}});
    CHECK(order_of({{}, {2}, {3}, {1}}).cycles == std::vector<std::vector<std::size_t>>{{1, 2, 3, 1}});
    CHECK(order_of({{1}, {0}, {3}, {2}}).cycles.size() == 2);
}

TEST_CASE("any acyclic use is put in order", "[property]") {
    std::mt19937 chance(20260901);
    for (int run = 0; run < 200; ++run) {
        const std::size_t n = 1 + chance() % 40;
        std::vector<std::size_t> rank(n);
        for (std::size_t i = 0; i < n; ++i) rank[i] = i;
        std::shuffle(rank.begin(), rank.end(), chance);
        std::vector<std::vector<std::size_t>> uses(n);
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t k = 0; k < n; ++k)
                if (rank[k] < rank[i] && chance() % 5 == 0) uses[i].push_back(k);
        const formulas::Order found = order_of(uses);
        REQUIRE(found.cycles.empty());
        REQUIRE(found.order.size() == n);
        std::vector<bool> seen(n);
        for (const std::size_t i : found.order) {
            for (const std::size_t used : uses[i]) REQUIRE(seen[used]);
            seen[i] = true;
        }
    }
}

TEST_CASE("a long chain of values does not end the stack") {
    Template t;
    for (int i = 0; i < 3000; ++i) t.value("v" + std::to_string(i), i == 2999 ? "page_width" : "v" + std::to_string(i + 1));
    t.made.bulk = t.formula("v0");
    CHECK(journal::compute(t.made, conditions(a4())).bulk == Length::mm(148.5));
}

TEST_CASE("a cycle of values is refused at a member, with the way round") {
    Template t;
    t.value("board-width", "opened_width / 2").value("spine", "page_width").value("opened-width", "2 * board_width + spine");
    const auto notes = refused(t, conditions(a4()));
    REQUIRE(notes.size() == 1);
    CHECK(notes[0].code == "formula-cycle");
    CHECK(notes[0].where.line == 1);
    CHECK_THAT(notes[0].what, Catch::Matchers::Contains("board-width -> opened-width -> board-width"));
}
