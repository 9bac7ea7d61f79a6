// SPDX-License-Identifier: GPL-3.0-or-later
// What a formula may say, what it gives, and how anything else is refused.
#include "journal/example.h"

#include <clocale>
#include <random>

using namespace qw;
using namespace qw::example;
using Catch::Matchers::Contains;

namespace {

/// The value of a formula that gives a number.
double number_of(const std::string& text) {
    Template t;
    t.length("gap", Length::mm(1), Length::inches(0.0625)).number("three", 3).number("four", 4);
    t.value("asked", text);
    // Counted to the thousandth by a check's own showing: the way a number comes out of a template.
    t.check("tells", "0", "asked * 1000", "0");
    const journal::Measures m = journal::compute(t.made, conditions(a4()));
    return std::stod(m.findings.at(0).measured) / 1000;
}

Length length_of(const std::string& text) {
    Template t;
    t.length("gap", Length::mm(1), Length::inches(0.0625)).length("long-gap", Length::mm(4), Length::inches(0.25));
    t.made.bulk = t.formula(text);
    return journal::compute(t.made, conditions(a4())).bulk;
}

std::vector<FaultNote> refusal_of(const std::string& text) {
    Template t;
    t.length("gap", Length::mm(1), Length::inches(0.0625)).length("board-width", Length::mm(4), Length::inches(0.25)).number("three", 3);
    t.value("asked", text);
    return refused(t, conditions(a4()));
}

}  // namespace

TEST_CASE("formulas follow the rules of arithmetic") {
    const auto [text, value] = GENERATE(table<std::string, double>({
        {"three + four * 2", 11},
        {"(three + four) * 2", 14},
        {"three - four - 2", -3},
        {"four / 2 / 2", 1},
        {"-three - four", -7},
        {"2 * -three", -6},
        {"three--four", 7},
        {"-(three - four) * 2", 2},
        {"0.5 + .25 * 0 + 1", 1.5},
        {"min(three, four, 2)", 2},
        {"max(three, four, 2)", 4},
        {"ceil(2.1) + floor(2.9)", 5},
        {"sqrt(four) + abs(-three)", 5},
        {"three < four", 1},
        {"three <= 3", 1},
        {"three > four", 0},
        {"three >= four", 0},
        {"three == 3", 1},
        {"three != 3", 0},
        {"three < four && four < 5", 1},
        {"three > four || four < 5", 1},
        {"three > four ? 10 : 20", 20},
        {"three < four ? four < 4 ? 1 : 2 : 3", 2},
        {"pi", 3.142},
        {"sheets + full_sheets", 17},
        {"page_width / page_height * 1.4142", 1},
    }));
    if (text.find(" .25") != std::string::npos) {
        CHECK(refusal_of(text).at(0).code == "formula-sign");  // a plain number begins with a digit
        return;
    }
    CAPTURE(text);
    CHECK(number_of(text) == Approx(value).margin(0.0006));
}

TEST_CASE("what is whole or equal but for the last digit is whole or equal") {
    // 0.1 added up has no exact sum in binary; a sheet more or a finding less must not hang on it.
    CHECK(number_of("ceil((0.1 + 0.2) * 10)") == 3);
    CHECK(number_of("floor(0.7 * 10 + 0.1 * 10)") == 8);
    CHECK(number_of("0.1 + 0.2 <= 0.3") == 1);
    CHECK(number_of("0.1 + 0.2 > 0.3") == 0);
    CHECK(number_of("0.1 + 0.2 == 0.3") == 1);
    CHECK(number_of("0.3 < 0.1 + 0.2") == 0);
    CHECK(number_of("0.3 >= 0.1 + 0.2") == 1);
    CHECK(number_of("ceil(3.00001)") == 4);
    CHECK(number_of("3.00001 > 3") == 1);
}

TEST_CASE("formulas give lengths") {
    CHECK(length_of("page_height - 2 * gap") == Length::mm(208));
    CHECK(length_of("long_gap > 2 * gap ? long_gap : gap") == Length::mm(4));
    CHECK(length_of("sqrt(gap * gap + long_gap * long_gap) * 1000 / 1000") == Length::mm(std::sqrt(17.0)));
    CHECK(length_of("gap * long_gap / gap") == Length::mm(4));
    CHECK(length_of("gap * pi / 2") == Length::mm(1.5707963267948966));
    CHECK(length_of("0") == Length());
}

TEST_CASE("numbers are read with a decimal point whatever the locale") {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    if (!std::setlocale(LC_ALL, "de_DE.UTF-8")) std::setlocale(LC_ALL, "C.UTF-8");
    CHECK(length_of("1.5 * long_gap") == Length::mm(6));
    std::setlocale(LC_ALL, before.c_str());
}

TEST_CASE("what formulas do not hold is refused with line, column and the formula") {
    const auto [text, code, word] = GENERATE(table<std::string, std::string, std::string>({
        {"", "formula-empty", ""},
        {"   ", "formula-empty", ""},
        {"gap + 3 mm", "formula-unit", "mm"},
        {"gap + 1/8 in", "formula-unit", "in"},
        {"gap + 3mm", "formula-unit", "mm"},
        {"2gap", "formula-unit", "gap"},
        {"0x10 * gap", "formula-unit", "x10"},
        {"1e3 * gap", "formula-unit", "e3"},
        {"gap = 3", "formula-assignment", ""},
        {"gap += three", "formula-assignment", ""},
        {"\"gap\"", "formula-sign", "character 1"},
        {"gap; gap", "formula-sign", "character 4"},
        {"gap ^ 2", "formula-sign", "character 5"},
        {"gap % 2", "formula-sign", ""},
        {"!three", "formula-sign", ""},
        {"Gap", "formula-sign", "character 1"},
        {"_gap", "formula-sign", ""},
        {"gap, three", "formula-several-results", ""},
        {"(gap, three)", "formula-several-results", ""},
        {"min(gap, (gap, gap))", "formula-several-results", ""},
        {"gap < three < 4", "formula-chain", ""},
        {"gap +", "formula-syntax", ""},
        {"* gap", "formula-syntax", ""},
        {"(gap", "formula-syntax", ""},
        {"gap)", "formula-syntax", ""},
        {"gap three", "formula-syntax", ""},
        {"three 3", "formula-syntax", ""},
        {"gap ? 1", "formula-syntax", ""},
        {"gap : 1", "formula-syntax", ""},
        {"()", "formula-syntax", ""},
        {"min()", "formula-syntax", ""},
        {"ceil(three, 2)", "formula-syntax", ""},
        {"ceil", "formula-syntax", ""},
        {"ceil + three", "formula-syntax", ""},
        {"min three", "formula-syntax", ""},
        {"gap(3)", "formula-syntax", ""},
        {"three / 0", "formula-not-finite", "divides by nothing"},
        {"three / (three - 3)", "formula-not-finite", "divides by nothing"},
        {"min(three, 1 / 0)", "formula-not-finite", "divides by nothing"},
        {"1 / 0 > 3", "formula-not-finite", "divides by nothing"},
        {"sqrt(0 - three)", "formula-not-finite", "root"},
        {std::string(4100, '1'), "formula-long", ""},
    }));
    CAPTURE(text);
    const std::vector<FaultNote> notes = refusal_of(text);
    REQUIRE(notes.size() == 1);
    CHECK(notes[0].code == code);
    CHECK(notes[0].where.file == "pipeline/journals/example.yaml");
    CHECK(notes[0].where.line == 4);
    CHECK(notes[0].where.column == 5);
    CHECK_THAT(notes[0].what, Contains(word));
    CHECK_THAT(notes[0].what, Contains("asked, '" + text.substr(0, 200)));
}

TEST_CASE("nothing of muParser's own is left in formulas") {
    const auto text = GENERATE(as<std::string>{}, "sin(three)", "rint(three)", "sum(three)", "avg(three)", "ceil3", "log(three)", "e * three",
                               "rnd(1)", "sign(three)");
    CAPTURE(text);
    CHECK(refusal_of(text).at(0).code == "formula-unknown-name");
    CHECK(refusal_of("_pi * three").at(0).code == "formula-sign");
    CHECK(refusal_of("_e * three").at(0).code == "formula-sign");
}

TEST_CASE("an unknown name comes with the nearest one") {
    CHECK(refusal_of("page_widht + gap").at(0).mend == "write 'page_width'");
    CHECK(refusal_of("ciel(three)").at(0).mend == "write 'ceil'");
    CHECK_THAT(refusal_of("board-width + gap").at(0).mend, Contains("write 'board_width'"));
    CHECK_THAT(refusal_of("something_quite_else").at(0).mend, Contains("'lengths'"));
}

TEST_CASE("a name is there once and can be written") {
    const auto code = [](const std::string& name) {
        Template t;
        t.length(name, Length::mm(1), Length::mm(1)).value("gap", "page_width");
        const auto notes = refused(t, conditions(a4()));
        return notes.at(0).code;
    };
    CHECK(code("gap") == "formula-name-twice");
    CHECK(code("page-width") == "formula-name-twice");
    CHECK(code("min") == "formula-name-twice");
    CHECK(code("2nd-gap") == "formula-name");
}

TEST_CASE("a long formula that is folded over lines is read as one") {
    CHECK(length_of("page_height\n  - 2\t* gap") == Length::mm(208));
}

TEST_CASE("whatever is written as a formula is evaluated or refused, nothing else", "[property]") {
    const std::vector<std::string> parts = {"gap", "three", "page_width", "min", "ceil", "sqrt", "1", "0", "2.5", "(", ")", "(", ")", ",", "+", "-", "*", "/",
                                            "<", "<=", "==", "&&", "||", "?", ":", "=", "mm", " ", "nowhere", "\"", ".", "e", "é", "!", "\n"};
    std::mt19937 chance(11);
    int refused = 0, evaluated = 0;
    for (int run = 0; run < 3000; ++run) {
        std::string text;
        for (std::size_t n = 1 + chance() % 9; n > 0; --n) text += parts[chance() % parts.size()];
        Template t;
        t.length("gap", Length::mm(1), Length::inches(0.0625)).number("three", 3).value("asked", text);
        try {
            journal::compute(t.made, conditions(a4()));
            ++evaluated;
        } catch (const Fault& fault) {
            ++refused;
            REQUIRE(fault.notes().at(0).where.line == 3);
        }
    }
    CHECK(refused > 2000);
    CHECK(evaluated > 20);
}
