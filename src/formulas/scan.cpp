// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/scan.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace qw::formulas {

namespace {

constexpr std::size_t longest_formula = 4000;  // far above any real one, a long stitch path included; keeps a hostile file from costing time
constexpr std::array<std::string_view, 18> signs = {"<=", ">=", "==", "!=", "&&", "||", "<", ">", "+",
                                                    "-",  "*",  "/",  "(",  ")",  ",",  "?", ":", "="};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool begins_name(char c) { return c >= 'a' && c <= 'z'; }
bool in_name(char c) { return begins_name(c) || is_digit(c) || c == '_'; }

std::string_view sign_at(std::string_view text) {
    for (const std::string_view sign : signs)
        if (text.starts_with(sign)) return sign;
    return {};
}

std::size_t number_length(std::string_view text) {
    std::size_t n = 0;
    while (n < text.size() && is_digit(text[n])) ++n;
    if (n + 1 < text.size() && text[n] == '.' && is_digit(text[n + 1])) {
        ++n;
        while (n < text.size() && is_digit(text[n])) ++n;
    }
    return n;
}

std::size_t name_length(std::string_view text) {
    std::size_t n = 0;
    while (n < text.size() && in_name(text[n])) ++n;
    return n;
}

Word next_word(const Asked& asked, std::string_view text, std::size_t at) {
    const std::string_view rest = text.substr(at);
    if (is_digit(rest[0])) return {Word::Kind::number, std::string(rest.substr(0, number_length(rest))), at};
    if (begins_name(rest[0])) return {Word::Kind::name, std::string(rest.substr(0, name_length(rest))), at};
    const std::string_view sign = sign_at(rest);
    if (sign.empty())
        throw fault_on(asked, "formula-sign", "holds something that no formula knows at character " + std::to_string(at + 1),
                       "small letters, digits, _ and + - * / ( ) , ? : < > <= >= == != && ||");
    if (sign == "=")
        throw fault_on(asked, "formula-assignment", "sets a value", "a formula without =", "give the result a name under 'values'");
    return {Word::Kind::sign, std::string(sign), at};
}

bool is_sign(const Word& word, std::string_view sign) { return word.kind == Word::Kind::sign && word.text == sign; }

bool is_comparison(const Word& word) {
    return word.kind == Word::Kind::sign && (word.text[0] == '<' || word.text[0] == '>' || word.text == "==" || word.text == "!=");
}

// "3 mm": nothing but a unit is ever written like that, and muParser would tell it less plainly.
void refuse_units(const Asked& asked, const std::vector<Word>& words) {
    for (std::size_t i = 1; i < words.size(); ++i)
        if (words[i - 1].kind == Word::Kind::number && words[i].kind == Word::Kind::name)
            throw fault_on(asked, "formula-unit", "has '" + words[i].text + "' behind a number",
                           "names and plain numbers without a unit", "name the length under 'lengths' and write its name here");
}

bool is_function(const Word& word) {
    const std::vector<std::string>& known = function_names();
    return word.kind == Word::Kind::name && std::find(known.begin(), known.end(), word.text) != known.end();
}

// Commas only part what a function is given; elsewhere they would make a second result, of which one is dropped.
// A comparison of a comparison ("0 < a < b") compares with 0 or 1, which nobody means.
void refuse_by_depth(const Asked& asked, const std::vector<Word>& words) {
    struct Level { bool call, compared; };
    std::vector<Level> open{{false, false}};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const Word& word = words[i];
        if (is_sign(word, "(")) {
            open.push_back({i > 0 && is_function(words[i - 1]), false});
        } else if (is_sign(word, ")")) {
            if (open.size() == 1) throw fault_on(asked, "formula-syntax", "closes a bracket that was not opened");
            open.pop_back();
        } else if (is_sign(word, ",")) {
            if (!open.back().call)
                throw fault_on(asked, "formula-several-results", "has more than one result", "one result", "commas stand only inside min( ) and max( )");
            open.back().compared = false;
        } else if (is_sign(word, "&&") || is_sign(word, "||") || is_sign(word, "?") || is_sign(word, ":")) {
            open.back().compared = false;
        } else if (is_comparison(word)) {
            if (open.back().compared)
                throw fault_on(asked, "formula-chain", "compares the result of a comparison", "a < b && b < c");
            open.back().compared = true;
        }
    }
}

}  // namespace

const std::vector<std::string>& function_names() {
    static const std::vector<std::string> names = {"min", "max", "ceil", "floor", "sqrt", "abs", "strands_across"};
    return names;
}

std::vector<Word> words_of(const Asked& asked) {
    const std::string_view text = asked.formula->text;
    if (text.size() > longest_formula) throw fault_on(asked, "formula-long", "is too long", "at most " + std::to_string(longest_formula) + " characters");
    std::vector<Word> words;
    for (std::size_t at = 0; at < text.size();) {
        if (text[at] == ' ' || text[at] == '\t' || text[at] == '\n' || text[at] == '\r') {
            ++at;
            continue;
        }
        words.push_back(next_word(asked, text, at));
        at += words.back().text.size();
    }
    if (words.empty()) throw fault_on(asked, "formula-empty", "is no formula", "names and plain numbers");
    refuse_units(asked, words);
    refuse_by_depth(asked, words);
    return words;
}

}  // namespace qw::formulas
