// SPDX-License-Identifier: GPL-3.0-or-later
// The thread's way through the stations, holes for several strands, and results that are neither cut nor bought.
#include "journal/example.h"

#include <cmath>
#include <numbers>
#include <random>

using namespace qw;
using namespace qw::example;
using Catch::Matchers::Contains;

namespace {

/// A signature with stations `inset` from head and tail and as many between them, evenly, as make `count`.
Template evenly_sewn(Length inset, int count, const std::vector<int>& path) {
    Template t;
    t.length("inset", inset, inset);
    std::vector<std::string> stations;
    for (int i = 0; i < count; ++i)
        stations.push_back("inset + (page_height - 2 * inset) * " + std::to_string(i) + " / " + std::to_string(count - 1));
    t.sewn(stations, path);
    return t;
}

Length path_of(const Template& t, const journal::Conditions& c) { return journal::compute(t.made, c).sewing->path; }

double strands_across(int n) {
    Template t;
    t.number("n", n).figure("told", "strands_across(n) * 100000", Rounding::nearest);
    return journal::compute(t.made, conditions(a4())).figures.at(0).number / 100000.0;
}

}  // namespace

// The paths as pamphlet bindings are sewn: from the middle inside, to one end, to the other, back to the middle
// (Indiana University Libraries, Book Repair Manual, pamphlet binding); with five stations over the ones between, too.
TEST_CASE("the pure path of a pamphlet stitch is twice the distance between the end stations") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> height(60, 400), inset(1, 29);
    for (int i = 0; i < 200; ++i) {
        journal::Conditions c = conditions(a4());
        c.page.height = Length::mm(height(random));
        const Length e = Length::mm(inset(random));
        const Length wanted = c.page.height * 2 - e * 4;
        CHECK(abs(path_of(evenly_sewn(e, 3, {2, 1, 3, 2}), c) - wanted) < Length::mm(0.001));
        CHECK(abs(path_of(evenly_sewn(e, 5, {3, 2, 1, 2, 4, 5, 4, 3}), c) - wanted) < Length::mm(0.001));
    }
}

TEST_CASE("a page of 8 1/2 in with stations 3/4 in from its ends needs 14 in of path") {
    // 2 x 8.5 - 4 x 0.75, by the geometry of the path; with 2.5 heights of thread 7 1/4 in are left for tails
    // (2.5 x height: Indiana University Libraries and Archival Products).
    journal::Conditions c = conditions(letter());
    c.page.height = Length::inches(8.5);
    const Length path = path_of(evenly_sewn(Length::inches(0.75), 3, {2, 1, 3, 2}), c);
    CHECK(path == Length::inches(14));
    CHECK(c.page.height * 2.5 - path == Length::inches(7.25));
}

TEST_CASE("formulas know the stations, the path, and the strands in the fullest hole") {
    Template t = evenly_sewn(Length::mm(20), 3, {2, 1, 3, 2});
    t.value("apart", "page_station_3 - page_station_1").value("thread", "stitch_path + apart");
    t.figure("thread", "thread", Rounding::down, false).figure("strands", "stitch_strands");
    const journal::Measures m = journal::compute(t.made, conditions(a4()));
    CHECK(m.figures.at(0).length.exact == Length::mm(3 * 170));
    CHECK(m.figures.at(1).number == 2);  // the middle hole, at the beginning and at the end
    CHECK(m.named_length("apart") == Length::mm(170));
}

TEST_CASE("a turn round an edge is as long as the way out to it and back") {
    using kit::Around;
    Template t;
    t.length("inset", Length::mm(20), Length::inches(0.75))
        .length("from-spine", Length::mm(8), Length::inches(0.3125))
        .length("block", Length::mm(3), Length::inches(0.125));
    t.sewn({"inset", "inset + 50 * block / 3", "page_height - inset"}, {2, 2, 1, 1, 1, 2, 3, 3});
    t.made.sewing->around = {Around::spine, Around::nothing, Around::spine, Around::head, Around::nothing, Around::nothing, Around::tail};
    t.made.sewing->inset = t.formula("from_spine");
    const auto path = [&] { return journal::compute(t.made, conditions(a4())).sewing->path; };
    // Two turns round the spine, 2 * 8 each; round the head 2 * 20 and the tail 2 * 20; 2-1 and 1-2 50 each; 2-3 210 - 90.
    CHECK(path() == Length::mm(2 * 16 + 40 + 40 + 50 + 50 + 120));
    // Eight stations and four turns go through or round 3 mm.
    t.made.sewing->through = t.formula("block");
    CHECK(path() == Length::mm(332 + 12 * 3));
    t.figure("strands", "stitch_strands").figure("out", "2 * stitch_inset + stitch_through", Rounding::nearest, false);
    const journal::Measures m = journal::compute(t.made, conditions(a4()));
    CHECK(m.figures.at(0).number == 3);
    CHECK(m.figures.at(1).length.exact == Length::mm(19));
    CHECK(m.named.count("from-spine") == 1);
    t.made.sewing->through = t.formula("3");  // a thickness is a length
    CHECK(refused(t, conditions(a4())).at(0).code == "formula-not-a-length");
    t.made.sewing->through = t.formula("stitch_path");
    CHECK(refused(t, conditions(a4())).at(0).code == "formula-cycle");
    t.made.sewing->through = {};
    t.made.figures.pop_back();
    t.made.sewing->inset = t.formula("block - from_spine");
    CHECK_THAT(refused(t, conditions(a4())).at(0).what, Contains("sewing.inset"));
}

TEST_CASE("a station that follows from a value that follows from it is a circle") {
    Template t;
    t.value("apart", "page_station_1 * 2");
    t.sewn({"apart / 2", "page_height"}, {1, 2});
    const auto notes = refused(t, conditions(a4()));
    CHECK(notes.at(0).code == "formula-cycle");
}

TEST_CASE("a path to a station that is not there is told") {
    Template t;
    t.sewn({"page_height / 2"}, {1, 2});
    const auto notes = refused(t, conditions(a4()));
    CHECK(notes.at(0).code == "formula-unknown-name");
    CHECK_THAT(notes.at(0).what, Contains("page_station_2"));
}

// Geometry: the centres of n <= 6 equal circles stand on a ring, that of a seventh in its middle; 13 and 19 as in
// Graham, Lubachevsky, Nurmela and Ostergard 1998 (2 + sqrt 5, 1 + sqrt 2 + sqrt 6).
TEST_CASE("the circle around several strands") {
    CHECK(strands_across(1) == 1);
    for (int n = 2; n <= 6; ++n) CHECK(strands_across(n) == Approx(1 + 1 / std::sin(std::numbers::pi / n)).margin(0.0001));
    CHECK(strands_across(7) == 3);
    CHECK(strands_across(13) == Approx(2 + std::sqrt(5.0)).margin(0.0001));
    CHECK(strands_across(19) == Approx(1 + std::sqrt(2.0) + std::sqrt(6.0)).margin(0.0001));
    for (int n = 2; n <= 19; ++n) {
        CHECK(strands_across(n) >= strands_across(n - 1));
        CHECK(strands_across(n) >= std::sqrt(double(n)));  // no more area than the circle has
    }
}

TEST_CASE("strands that cannot be counted are refused") {
    for (const double n : {0.0, 1.5, 20.0, -1.0}) {
        Template t;
        t.number("n", n).figure("told", "strands_across(n)");
        CHECK(refused(t, conditions(a4())).at(0).code == "formula-not-finite");
    }
}

TEST_CASE("what was replaced is 0 in formulas, what is there is 1") {
    Template t;
    t.piece("flap", "1", "page_width", "page_height");
    t.made.replaced = {"closing-band"};
    t.figure("flaps", "has_flap").figure("bands", "has_closing_band");
    const journal::Measures m = journal::compute(t.made, conditions(a4()));
    CHECK(m.figures.at(0).number == 1);
    CHECK(m.figures.at(1).number == 0);
}

TEST_CASE("what was left out altogether is told apart from what was replaced") {
    Template t;
    t.piece("flap", "1", "page_width", "page_height").piece("spine-strip", "1", "page_width", "page_height");
    t.made.replaced = {"closing-band", "flap"};
    t.figure("a", "without_closing_band").figure("b", "without_flap").figure("c", "has_flap").figure("d", "without_spine_strip").figure("e", "has_closing_band");
    const journal::Measures m = journal::compute(t.made, conditions(a4()));
    std::string told;
    for (const journal::ToldFigure& figure : m.figures) told += std::to_string(figure.number);
    CHECK(told == "10000");
}

TEST_CASE("formulas are given how thick a thing is, or what a kit chose in its place") {
    Template t;
    t.piece("flap", "1", "page_width", "page_height").piece("wrap", "1", "page_width", "page_height");
    t.made.pieces[0].thickness = {Length::mm(2), Length::inches(0.0625)};
    t.made.pieces[0].instead = {{"felt", "Felt", "wool", {}, "", kit::BothLengths{Length::mm(3), Length::inches(0.125)}}, {"cloth", "Cloth", "linen", {}, ""}};
    t.made.pieces[0].optional = true;
    t.figure("twice", "2 * thickness_of_flap", Rounding::nearest, false);
    const auto told = [&](const kit::JournalTemplate& made, const Paper& paper, UnitSystem system) {
        return journal::compute(made, conditions(paper, 0.5)).figures.at(0).text(system);
    };
    const auto choice = [&](const std::string& name) { return kit::chosen(t.made, {{"flap", {name, {}}}}); };
    CHECK(told(t.made, a4(), UnitSystem::metric) == "4 mm");  // it does not shrink with the print
    CHECK(told(t.made, letter(), UnitSystem::us) == "1/8 in");
    CHECK(told(choice("felt"), a4(), UnitSystem::metric) == "6 mm");
    CHECK(told(choice("felt"), letter(), UnitSystem::us) == "1/4 in");
    CHECK(told(choice("cloth"), a4(), UnitSystem::metric) == "4 mm");
    CHECK(told(choice("none"), a4(), UnitSystem::metric) == "0 mm");
    t.figure("other", "thickness_of_wrap", Rounding::nearest, false);
    CHECK(refused(t, conditions(a4())).at(0).code == "formula-unknown-name");
}

TEST_CASE("a step stands where its condition is not 0") {
    Template t;
    t.piece("flap", "1", "page_width", "page_height").length("limit", Length::mm(120), Length::inches(4.75));
    const auto step = [&](const std::string& when) {
        kit::StepTemplate made;
        made.title = when;
        if (!when.empty()) made.when = t.formula(when);
        t.made.steps.push_back(made);
    };
    for (const std::string when : {"", "has_flap", "has_flap == 0", "page_width < limit", "2"}) step(when);
    const auto standing = [&](double scale) {
        const journal::Measures m = journal::compute(t.made, conditions(a4(), scale));
        std::vector<std::string> titles;
        for (const kit::StepTemplate* one : m.steps) titles.push_back(one->title);
        return titles;
    };
    CHECK(standing(1) == std::vector<std::string>{"", "has_flap", "2"});
    CHECK(standing(0.5) == std::vector<std::string>{"", "has_flap", "page_width < limit", "2"});
    step("limit");  // a length is no condition
    const auto notes = refused(t, conditions(a4()));
    CHECK(notes.at(0).code == "formula-not-a-number");
    CHECK_THAT(notes.at(0).what, Contains("steps[6].when"));
    t.made.steps.back().when.text = "has_flop";
    CHECK(refused(t, conditions(a4())).at(0).mend == "write 'has_flap'");
}

TEST_CASE("a figure is rounded once, the way it says") {
    Template t;
    t.length("step", Length::mm(1), Length::inches(1.0 / 16));
    t.figure("down", "7.9 / 2").figure("up", "7.9 / 2", Rounding::up).figure("whole", "0.1 * 30").figure("length", "step * 1.3", Rounding::up, false);
    const journal::Measures m = journal::compute(t.made, conditions(a4()));
    CHECK(m.figures.at(0).text(UnitSystem::metric) == "3");
    CHECK(m.figures.at(1).text(UnitSystem::us) == "4");
    CHECK(m.figures.at(2).number == 3);
    CHECK(m.figures.at(3).text(UnitSystem::metric) == "1.5 mm");
    CHECK(m.figures.at(3).text(UnitSystem::us) == "1/8 in");
}

TEST_CASE("one calculation serves many sizes") {
    Template t = evenly_sewn(Length::mm(20), 3, {2, 1, 3, 2});
    t.piece("board", "2", "page_width", "page_height");
    journal::Calculation calculation(t.made);
    for (const double scale : {1.03, 0.3, 1.0}) {
        const journal::Measures once = journal::compute(t.made, conditions(a4(), scale)), again = calculation.at(conditions(a4(), scale));
        CHECK(again.pieces.at(0).height.rounded == once.pieces.at(0).height.rounded);
        CHECK(again.sewing->path == once.sewing->path);
    }
}

TEST_CASE("a size at which stations lie beyond the page, or out of their order, fails") {
    const auto found = [](const Template& t) {
        const journal::Measures m = journal::compute(t.made, conditions(a4()));
        REQUIRE(m.findings.size() == 1);
        CHECK(m.findings.at(0).rule == "journal-stations-on-page");
        CHECK(m.findings.at(0).level == Level::error);
        return m.findings.at(0).message;
    };
    Template beyond;
    beyond.length("inset", Length::mm(20), Length::inches(0.75));
    beyond.sewn({"inset", "page_height + inset"}, {1, 2});
    CHECK_THAT(found(beyond), Contains("beyond the page"));
    Template mixed;
    mixed.length("inset", Length::mm(20), Length::inches(0.75));
    mixed.sewn({"page_height - inset", "inset"}, {1, 2});
    CHECK_THAT(found(mixed), Contains("below the one before"));
}

TEST_CASE("a piece that is nothing at half size says which formula, which size, and what mends it") {
    Template t;
    t.length("frame", Length::mm(40), Length::inches(1.5)).value("window", "page_width - 2 * frame");
    t.piece("window", "1", "window", "page_height");
    CHECK_NOTHROW(journal::compute(t.made, conditions(a4())));
    const auto notes = refused(t, conditions(a4(), 0.5));
    CHECK(notes.at(0).code == "formula-negative");
    CHECK_THAT(notes.at(0).what, Contains("'page_width - 2 * frame'"));
    CHECK_THAT(notes.at(0).what, Contains("print scale 0.500"));
    CHECK_FALSE(notes.at(0).mend.empty());
}
