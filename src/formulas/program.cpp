// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/program.h"

#include "base/words.h"

#include <muParser.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstring>
#include <iterator>

namespace qw::formulas {

namespace {

/// Thrown inside a formula's own steps, caught in run(): what is wrong, for the note.
struct Trouble {
    const char* what;
};

constexpr double near = 1e-9;

double finite(double value) {
    if (!std::isfinite(value)) throw Trouble{"gives no finite number"};
    return value;
}
bool equal(double a, double b) { return std::abs(a - b) <= near * std::max(std::abs(a), std::abs(b)); }

double plus(double a, double b) { return finite(a + b); }
double minus(double a, double b) { return finite(a - b); }
double times(double a, double b) { return finite(a * b); }
double divided(double a, double b) {
    if (b == 0) throw Trouble{"divides by nothing"};
    return finite(a / b);
}
double less(double a, double b) { return a < b && !equal(a, b); }
double more(double a, double b) { return a > b && !equal(a, b); }
double at_most(double a, double b) { return a < b || equal(a, b); }
double at_least(double a, double b) { return a > b || equal(a, b); }
double same(double a, double b) { return equal(a, b); }
double other(double a, double b) { return !equal(a, b); }
double both(double a, double b) { return a != 0 && b != 0; }
double either(double a, double b) { return a != 0 || b != 0; }
double negative(double a) { return -a; }

double least(const double* values, int count) { return *std::min_element(values, values + count); }
double most(const double* values, int count) { return *std::max_element(values, values + count); }
double next_whole(double a) { return std::ceil(a - near * std::max(1.0, std::abs(a))); }
double last_whole(double a) { return std::floor(a + near * std::max(1.0, std::abs(a))); }
double root(double a) {
    if (a < 0) throw Trouble{"takes the root of less than nothing"};
    return std::sqrt(a);
}
/// Diameters of the smallest circles around 1 to 19 circles of diameter 1 (Graham, Lubachevsky, Nurmela and Östergård,
/// Congruent circles packed in a circle, Discrete Mathematics 181, 1998).
double around(double strands) {
    constexpr double diameters[] = {1,      2,      2.1547, 2.4143, 2.7014, 3,      3,      3.3048, 3.6132, 3.8131,
                                    3.9239, 4.0297, 4.2361, 4.3285, 4.5214, 4.6155, 4.7921, 4.8638, 4.8638};
    const double whole = std::round(strands);
    if (std::abs(strands - whole) > near || whole < 1 || whole > double(std::size(diameters))) throw Trouble{"asks strands_across for other than 1 to 19 strands"};
    return diameters[static_cast<std::size_t>(whole) - 1];
}
double size_of(double a) { return std::abs(a); }

constexpr std::pair<const char*, double (*)(double)> functions_of_one[] = {
    {"ceil", next_whole}, {"floor", last_whole}, {"sqrt", root}, {"abs", size_of}, {"strands_across", around}};
constexpr std::pair<const char*, double (*)(const double*, int)> functions_of_many[] = {{"min", least}, {"max", most}};

struct Sign {
    const char* name;
    double (*function)(double, double);
    int precedence;
};
constexpr Sign two_sided[] = {
    {"+", plus, mu::prADD_SUB},    {"-", minus, mu::prADD_SUB},   {"*", times, mu::prMUL_DIV}, {"/", divided, mu::prMUL_DIV},
    {"<", less, mu::prCMP},        {">", more, mu::prCMP},        {"<=", at_most, mu::prCMP},  {">=", at_least, mu::prCMP},
    {"==", same, mu::prCMP},       {"!=", other, mu::prCMP},      {"&&", both, mu::prLAND},    {"||", either, mu::prLOR}};

/// A plain number: digits, and a decimal point between digits. Nothing of a locale, no exponents, no other bases.
int read_number(const char* text, int* position, double* value) {
    if (text[0] < '0' || text[0] > '9') return 0;
    const char* end = text + std::strlen(text);
    const auto [rest, error] = std::from_chars(text, end, *value, std::chars_format::fixed);
    if (error != std::errc()) return 0;
    *position += static_cast<int>(rest - text);
    return 1;
}

FaultNote unknown_name(const Asked& asked, const std::vector<Word>& words, std::size_t i, const Names& names) {
    const std::string& name = words[i].text;
    std::vector<std::string> known = names.words();
    known.insert(known.end(), function_names().begin(), function_names().end());
    // "board-width" is the name as the lengths have it; in a formula it is a subtraction of two unknown names.
    std::string joined = name;
    for (std::size_t k = i; k + 2 < words.size() && words[k + 1].text == "-" && words[k + 2].kind == Word::Kind::name; k += 2) {
        joined += "_" + words[k + 2].text;
        if (names.find(joined))
            return note_on(asked, "formula-unknown-name", "holds the unknown name '" + name + "'", {},
                           "write '" + joined + "': a hyphen in a name is an underscore in a formula");
    }
    const std::optional<std::string> nearest = nearest_word(name, known);
    return note_on(asked, "formula-unknown-name", "holds the unknown name '" + name + "'", {},
                   nearest ? "write '" + *nearest + "'" : "name it under 'lengths', 'numbers' or 'values'");
}

/// The slots of the names in the formula; every unknown one is told, unless it is the tail of a name already told.
std::vector<std::size_t> slots_of(const Asked& asked, const std::vector<Word>& words, const Names& names) {
    std::vector<std::size_t> slots;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i].kind != Word::Kind::name) continue;
        const auto& functions = function_names();
        if (std::find(functions.begin(), functions.end(), words[i].text) != functions.end()) continue;
        const std::optional<std::size_t> slot = names.find(words[i].text);
        if (!slot) throw Fault(FaultKind::not_understood, unknown_name(asked, words, i, names));
        if (std::find(slots.begin(), slots.end(), *slot) == slots.end()) slots.push_back(*slot);
    }
    return slots;
}

}  // namespace

/// muParser without anything of its own: only the functions and signs above.
class Program::Parser final : public mu::ParserBase {
public:
    Parser() {
        AddValIdent(read_number);
        InitCharSets();
        InitFun();
        InitOprt();
        EnableOptimizer(false);  // each sign runs as written
    }

private:
    void InitCharSets() override {
        DefineNameChars("abcdefghijklmnopqrstuvwxyz_0123456789");
        DefineOprtChars("+-*/<>=!&|");
        DefineInfixOprtChars("-");
    }
    void InitFun() override {
        for (const auto& [name, function] : functions_of_one) DefineFun(name, function);
        for (const auto& [name, function] : functions_of_many) DefineFun(name, function);
    }
    void InitConst() override {}
    void InitOprt() override {
        EnableBuiltInOprt(false);
        for (const Sign& sign : two_sided) DefineOprt(sign.name, sign.function, static_cast<unsigned>(sign.precedence));
        DefineInfixOprt("-", negative);
    }
};

Program::Program(const Asked& asked, const Names& names, const std::vector<double>& slots)
    : asked_(asked), uses_(slots_of(asked, words_of(asked), names)), parser_(std::make_unique<Parser>()) {
    try {
        // muParser asks for variables it may write to; with assignment gone it has no way to.
        for (const std::size_t slot : uses_) parser_->DefineVar(names.words()[slot], const_cast<double*>(&slots[slot]));
        std::string text = asked.formula->text;
        std::replace_if(text.begin(), text.end(), [](char c) { return c == '\t' || c == '\n' || c == '\r'; }, ' ');
        parser_->SetExpr(text);
        // Reads the formula, and evaluates it with whatever stands in the slots. (Asking muParser for the names in use
        // would only read it, but turns unknown names into zeros for good.)
        parser_->Eval();
    } catch (const Trouble&) {
        return;  // it was read; its values come later
    } catch (const mu::ParserError& error) {
        const int at = error.GetPos();
        throw fault_on(asked, "formula-syntax",
                       at >= 0 && static_cast<std::size_t>(at) < asked.formula->text.size()
                           ? "cannot be read from character " + std::to_string(at + 1) + " on"
                           : std::string("ends too early or lacks a part"),
                       "names, plain numbers and signs that belong together");
    }
}

Program::Program(Program&&) noexcept = default;
Program& Program::operator=(Program&&) noexcept = default;
Program::~Program() = default;

double Program::run() const {
    try {
        int results = 0;
        const double* last = parser_->Eval(results);
        if (results != 1) throw fault_on(asked_, "formula-several-results", "has more than one result", "one result");
        return finite(last[0]);
    } catch (const Trouble& trouble) {
        throw fault_on(asked_, "formula-not-finite", trouble.what, "a finite result for every kit and size",
                       "ask first, as in: sheets > 0 ? bulk / sheets : bulk");
    } catch (const mu::ParserError&) {
        throw fault_on(asked_, "formula-syntax", "cannot be evaluated", "names, plain numbers and signs that belong together");
    }
}

}  // namespace qw::formulas
