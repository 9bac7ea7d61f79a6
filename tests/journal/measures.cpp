// SPDX-License-Identifier: GPL-3.0-or-later
// From a template and what the buyer printed to sizes as they are shown.
#include "journal/example.h"

#include <random>

using namespace qw;
using namespace qw::example;

TEST_CASE("each unit system has its own lengths and its own steps; the paper says which is exact") {
    Template t;
    t.length("square", Length::mm(3), Length::inches(0.125));
    t.value("board-height", "page_height + 2 * square").piece("board", "2", "page_width", "board_height");
    const journal::Measures m = journal::compute(t.made, conditions(letter(), 0.94));
    const journal::Shown& height = m.piece("board")->height;
    // Letter at 94 % is 202.946 mm high. With 3 mm squares 208.946 mm, with 1/8 in squares 209.296 mm.
    CHECK(m.ruler == UnitSystem::us);
    CHECK(height.exact == Length::mm(209.296));
    CHECK(height.us == Length::inches(8.25));
    CHECK(height.rounded == Length::inches(8.25));
    CHECK(height.metric == Length::mm(209));
    // The other ruler's value is no conversion: 8 1/4 in would be 209.55 mm.
    CHECK(m.piece("board")->text(UnitSystem::metric) == "131.5 x 209 mm");
    CHECK(m.piece("board")->text(UnitSystem::us) == "5 3/16 x 8 1/4 in");

    const journal::Measures on_a4 = journal::compute(t.made, conditions(a4()));
    CHECK(on_a4.ruler == UnitSystem::metric);
    CHECK(on_a4.piece("board")->height.exact == Length::mm(216));
    CHECK(on_a4.piece("board")->height.rounded == Length::mm(216));
    CHECK(on_a4.piece("board")->height.us == Length::inches(8 + 9.0 / 16));  // 210 mm and 1/4 in is 8.518 in
    CHECK(on_a4.piece("none") == nullptr);
}

TEST_CASE("a value within 0.05 mm of a step is that step, whichever way it is rounded") {
    for (const auto& [size, way, shown] : std::vector<std::tuple<double, Rounding, double>>{{144.04, Rounding::up, 144},
                                                                                            {144.06, Rounding::up, 144.5},
                                                                                            {144.46, Rounding::down, 144.5},
                                                                                            {144.44, Rounding::down, 144},
                                                                                            {144.2, Rounding::nearest, 144}}) {
        Template t;
        t.length("size", Length::mm(size), Length::mm(size)).piece("board", "1", "size", "size", way);
        CHECK(journal::compute(t.made, conditions(a4())).piece("board")->width.rounded == Length::mm(shown));
    }
}

TEST_CASE("what is not there is not listed") {
    Template t;
    t.length("gap", Length::mm(3), Length::inches(0.125));
    t.piece("board", "full_sheets > 0 ? 2 : 0", "gap", "gap");
    kit::ItemTemplate item;
    item.name = "eyelet";
    item.count = t.formula("sheets - 12");
    t.made.items.push_back(item);
    auto c = conditions(a4());
    CHECK(journal::compute(t.made, c).pieces.size() == 1);
    c.full_sheets = 0;
    CHECK(journal::compute(t.made, c).pieces.empty());
    CHECK(journal::compute(t.made, c).items.empty());
    c.sheets = 15;
    CHECK(journal::compute(t.made, c).items.at(0).count == 3);
}

TEST_CASE("stations go to the nearest mark of the ruler") {
    Template t;
    t.length("inset", Length::mm(37.3), Length::inches(1.40));
    t.made.stations.page = {t.formula("inset"), t.formula("page_height / 2")};
    t.made.stations.spine = {t.formula("0")};
    const auto m = journal::compute(t.made, conditions(a4()));
    REQUIRE(m.page_stations.size() == 2);
    CHECK(m.page_stations[0].exact == Length::mm(37.3));
    CHECK(m.page_stations[0].metric == Length::mm(37.5));
    CHECK(m.page_stations[0].us == Length::inches(1.375));
    CHECK(m.page_stations[1].rounded == Length::mm(105));
    CHECK(m.spine_stations.at(0).rounded == Length());
}

TEST_CASE("fixed lengths stay, printed ones shrink", "[property]") {
    std::mt19937 chance(41);
    std::uniform_real_distribution<double> scales(0.30, 1.03), sizes(0.5, 60);
    for (int run = 0; run < 300; ++run) {
        const double size = sizes(chance), scale = scales(chance);
        Template t;
        t.length("fixed-one", Length::mm(size), Length::mm(size)).length("printed-one", Length::mm(size), Length::mm(size), true);
        t.piece("stays", "1", "fixed_one", "fixed_one").piece("shrinks", "1", "printed_one", "printed_one").piece("page", "1", "page_width", "page_height");
        const Paper paper = run % 2 ? a4() : letter();
        const auto m = journal::compute(t.made, conditions(paper, scale));
        CAPTURE(size, scale);
        CHECK(m.piece("stays")->width.exact == Length::mm(size));
        CHECK(m.piece("shrinks")->width.exact.in_mm() == Approx(size * scale).margin(2.0 / Length::units_per_mm));
        CHECK(m.piece("page")->height.exact.in_mm() == Approx(paper.size.width.in_mm() * scale).margin(2.0 / Length::units_per_mm));
    }
}

TEST_CASE("what is shown is never more than a step from what was computed, and on the right side", "[property]") {
    std::mt19937 chance(43);
    std::uniform_real_distribution<double> sizes(1, 400);
    for (int run = 0; run < 400; ++run) {
        const double size = sizes(chance);
        Template t;
        t.length("size", Length::mm(size), Length::mm(size));
        t.piece("covers", "1", "size", "size", Rounding::up).piece("goes-in", "1", "size", "size / 2", Rounding::down);
        if (run % 2) t.made.pieces[1].width = t.formula("size * 1");  // one value is rounded in one way
        else t.made.pieces[1].width = t.formula("1 * size");
        const auto m = journal::compute(t.made, conditions(run % 3 ? a4() : letter()));
        for (const auto system : {UnitSystem::metric, UnitSystem::us}) {
            const Length step = system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16);
            const auto in = [&](const journal::Shown& s) { return system == UnitSystem::metric ? s.metric : s.us; };
            const Length up = in(m.piece("covers")->width), down = in(m.piece("goes-in")->width), exact = Length::mm(size);
            CAPTURE(size);
            CHECK(up >= exact - snap_to_step);
            CHECK(up < exact + step);
            CHECK(down <= exact + snap_to_step);
            CHECK(down > exact - step);
            CHECK(up.in_units() % step.in_units() == 0);
        }
    }
}

TEST_CASE("one value that two pieces round in two ways is refused") {
    Template t;
    t.value("edge", "page_width / 2").piece("board", "1", "edge", "edge", Rounding::up).piece("liner", "1", "edge", "page_height", Rounding::down);
    CHECK(refused(t, conditions(a4())).at(0).code == "formula-two-roundings");
}
