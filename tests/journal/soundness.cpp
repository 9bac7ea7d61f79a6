// SPDX-License-Identifier: GPL-3.0-or-later
// A length grows with the unit in which it is counted, a number does not, and nothing else is either.
#include "journal/example.h"

#include "formulas/soundness.h"

using namespace qw;
using namespace qw::example;

namespace {

std::string code_of(const std::string& place, const std::string& text) {
    Template t;
    t.length("gap", Length::mm(3), Length::inches(0.125)).length("edge", Length::mm(5), Length::inches(0.25)).number("three", 3);
    if (place == "value") t.value("asked", text);
    if (place == "count") t.piece("board", text, "gap", "gap");
    if (place == "size") t.piece("board", "1", text, "gap");
    if (place == "bulk") t.made.bulk = t.formula(text);
    if (place == "holds") t.check("asked", text);
    if (place == "station") t.made.stations.spine.push_back(t.formula(text));
    const auto notes = refused(t, conditions(a4()));
    REQUIRE(notes.size() == 1);
    CHECK(notes[0].where.line >= 4);
    CHECK_THAT(notes[0].what, Catch::Matchers::Contains("'" + text + "'"));
    return notes[0].code;
}

}  // namespace

TEST_CASE("what is no length and no number is refused") {
    const auto text = GENERATE(as<std::string>{}, "gap + 3", "gap - three", "gap * edge", "three / gap", "sqrt(gap)", "gap * gap + 1", "min(gap, 3)",
                               "max(gap, three)", "min(edge, gap, 4)", "ceil(gap)", "floor(page_width)", "ceil(page_height)", "gap < 5 ? gap : edge",
                               "gap > 2.9", "gap == 3", "abs(gap + 1)", "gap / edge + gap", "page_width + sheets", "gap * page_caliper",
                               "gap < three ? 1 : 0", "sheets > 3 ? gap + 1 : gap");
    CAPTURE(text);
    CHECK(code_of("value", text) == "formula-unsound");
}

TEST_CASE("what does not go together is told: lengths, areas and plain numbers apart") {
    const auto [text, told] = GENERATE(table<std::string, std::string>({
        {"gap + 3", "adds a length to a plain number: 'gap' and '3'"},
        {"3 + gap", "adds a length to a plain number: 'gap' and '3'"},
        {"gap - three", "takes a plain number from a length: 'three' and 'gap'"},
        {"gap + gap * edge", "adds a length to an area: 'gap' and 'gap * edge'"},
        {"gap * edge + gap", "adds a length to an area: 'gap' and 'gap * edge'"},
        {"gap * gap + 1", "adds an area to a plain number: 'gap * gap' and '1'"},
        {"page_height - gap * (edge + gap)", "takes an area from a length: 'gap * (edge + gap)' and 'page_height'"},
        {"gap * edge", "gives an area, neither a length nor a number"},
        {"gap * edge * gap", "gives a volume"},
        {"three / gap", "gives a number divided by a length"},
        {"sqrt(gap)", "gives a length to the power of 0.5"},
        {"min(gap, 3)", "takes the smaller of a length and a plain number: 'gap' and '3'"},
        {"max(edge, gap, three)", "takes the larger of a length and a plain number"},
        {"ceil(2 * gap)", "asks ceil for a length: '2 * gap'"},
        {"gap > 2.9", "compares a length with a plain number: 'gap' and '2.9'"},
        {"gap < three ? 1 : 0", "compares a length with a plain number"},
        {"sheets > 3 ? gap + 1 : gap", "adds a length to a plain number: 'gap' and '1'"},
        {"gap / edge + gap", "adds a length to a plain number: 'gap' and 'gap / edge'"},
        {"twice + three", "adds a length to a plain number: 'twice' and 'three'"},
        {"glued_in + gap + three", "adds a length to a plain number"},
        {"-(gap * edge) + gap", "adds a length to an area: 'gap' and '-(gap * edge)'"},
        {"page_width - gap - 1", "takes a plain number from a length: '1' and 'page_width - gap'"},
    }));
    Template t;
    t.length("gap", Length::mm(3), Length::inches(0.125)).length("edge", Length::mm(5), Length::inches(0.25)).number("three", 3);
    t.value("asked", text).value("twice", "2 * gap");
    CAPTURE(text);
    const auto notes = refused(t, conditions(a4()));
    REQUIRE(notes.size() == 1);
    CHECK(notes[0].code == "formula-unsound");
    CHECK(notes[0].where.line == 4);
    CHECK_THAT(notes[0].what, Catch::Matchers::Contains("asked, '" + text + "', " + told));
    CHECK_FALSE(notes[0].mend.empty());
}

TEST_CASE("a length is asked for, or a number, and the other is refused") {
    CHECK(code_of("count", "gap") == "formula-not-a-number");
    CHECK(code_of("count", "2.5") == "formula-count");
    CHECK(code_of("count", "2.0005") == "formula-count");
    CHECK(code_of("count", "0 - 1") == "formula-count");
    CHECK(code_of("size", "three") == "formula-not-a-length");
    CHECK(code_of("size", "gap - edge") == "formula-negative");
    CHECK(code_of("size", "gap - gap") == "formula-negative");
    CHECK(code_of("size", "1000 * page_width") == "formula-too-long");
    CHECK(code_of("bulk", "three") == "formula-not-a-length");
    CHECK(code_of("bulk", "gap - edge") == "formula-negative");
    CHECK(code_of("holds", "gap") == "formula-not-a-number");
    CHECK(code_of("holds", "gap < three") == "formula-unsound");
    CHECK(code_of("station", "gap - edge") == "formula-negative");
}

TEST_CASE("what a check shows is of one kind") {
    Template t;
    t.length("gap", Length::mm(3), Length::inches(0.125)).check("asked", "1", "gap", "3");
    CHECK(refused(t, conditions(a4())).at(0).code == "formula-unsound");
    Template none;
    none.check("asked", "1", "1", "1", "fatal");
    CHECK(refused(none, conditions(a4())).at(0).code == "unknown-level");
}

TEST_CASE("what is wrong in one unit system alone is found on either paper") {
    Template t;
    t.length("wide", Length::mm(5), Length::inches(1)).length("gap", Length::mm(3), Length::inches(2)).piece("board", "1", "wide - gap", "wide");
    for (const Paper& paper : {a4(), letter()}) CHECK(refused(t, conditions(paper)).at(0).code == "formula-negative");
}

TEST_CASE("all that is wrong is told in one run, and what only follows from it is not") {
    Template t;
    t.length("gap", Length::mm(3), Length::inches(0.125));
    t.value("first", "gap + 1").value("second", "first * 2").value("third", "gap * gap");
    t.piece("board", "1", "second", "third").piece("liner", "gap", "gap", "gap");
    std::vector<std::string> codes;
    for (const FaultNote& note : refused(t, conditions(a4()))) codes.push_back(note.code);
    CHECK(codes == std::vector<std::string>{"formula-unsound", "formula-unsound", "formula-not-a-number"});

    Template divided;
    divided.value("first", "1 / 0").value("second", "3 / first");
    CHECK(refused(divided, conditions(a4())).size() == 1);

    Template written;
    written.value("first", "gap").value("second", "3 mm").value("third", "third + page_width");
    CHECK(refused(written, conditions(a4())).size() == 3);
}

TEST_CASE("kinds are told from results in several unit sizes") {
    const auto results = [](auto of_unit) {
        std::vector<double> all;
        for (const double unit : formulas::unit_sizes) all.push_back(of_unit(unit));
        return all;
    };
    using formulas::Kind;
    CHECK(formulas::kind_of(results([](double) { return 2.5; })) == Kind::number);
    CHECK(formulas::kind_of(results([](double unit) { return 2.5 * unit; })) == Kind::length);
    CHECK(formulas::kind_of(results([](double) { return 0.0; })) == Kind::nothing);
    CHECK_FALSE(formulas::kind_of(results([](double unit) { return 2.5 * unit * unit; })));
    CHECK_FALSE(formulas::kind_of(results([](double unit) { return 2.5 / unit; })));
    CHECK_FALSE(formulas::kind_of(results([](double unit) { return 2.5 + unit; })));
    // A relative error of 1e-8 is more than sums of doubles make.
    CHECK_FALSE(formulas::kind_of(results([](double unit) { return 100 * unit * (unit == 2.5 ? 1 + 1e-8 : 1); })));
    CHECK(formulas::kind_of(results([](double unit) { return 100 * unit * (unit == 2.5 ? 1 + 1e-11 : 1); })) == Kind::length);
}
