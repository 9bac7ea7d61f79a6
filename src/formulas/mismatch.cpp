// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/mismatch.h"

#include "formulas/scan.h"

#include <cstdio>
#include <vector>

namespace qw::formulas {

namespace {

/// A part of a formula: to which power it grows with the unit of lengths (0 a number, 1 a length, 2 an area); nothing
/// where it is zero or not known, which goes with everything. And where it stands in the text.
struct Part {
    std::optional<double> power;
    std::size_t from = 0, to = 0;
};

std::string power_name(double power) {
    if (power == 0) return "a plain number";
    if (power == 1) return "a length";
    if (power == 2) return "an area";
    if (power == 3) return "a volume";
    if (power == -1) return "a number divided by a length";
    char text[48];
    std::snprintf(text, sizeof text, "a length to the power of %g", power);
    return text;
}

/// Reads a formula that is known to be well formed. The first place where two parts do not go together is kept.
class PowerReader {
public:
    PowerReader(const std::string& text, std::vector<Word> words, const std::function<std::optional<Kind>(const std::string&)>& kind)
        : text_(text), words_(std::move(words)), kind_(kind) {}

    std::optional<Mismatch> read() {
        const Part whole = choice();
        if (!found_ && whole.power && *whole.power != 0 && *whole.power != 1)
            found_ = Mismatch{"gives " + power_name(*whole.power) + ", neither a length nor a number",
                              *whole.power > 1 ? "divide it by a length, or take its root with sqrt( )" : "multiply it by a length"};
        return found_;
    }

private:
    bool at(const std::string& sign) const { return next_ < words_.size() && words_[next_].text == sign; }
    bool take(const std::string& sign) {
        if (!at(sign)) return false;
        ++next_;
        return true;
    }
    std::size_t end_of_last() const { return next_ == 0 ? 0 : words_[next_ - 1].at + words_[next_ - 1].text.size(); }
    std::string quoted(const Part& part) const { return "'" + text_.substr(part.from, part.to - part.from) + "'"; }

    static std::string mend_of(double a, double b) {
        if (a == 0 || b == 0) return a + b == 1 ? "name the length that a plain number stands for" : "divide lengths by lengths until both are of one kind";
        return "divide by a length what is more than a length, or take its root with sqrt( )";
    }

    /// `before` and `between` say what is done: "adds" … "to".
    Part together(const Part& left, const Part& right, const std::string& before, const std::string& between) {
        const Part both{left.power ? left.power : right.power, left.from, right.to};
        if (found_ || !left.power || !right.power || *left.power == *right.power) return both;
        const bool turned = *right.power == 1 && before == "adds";  // the length first, whichever way they stand
        const Part &first = turned ? right : left, &second = turned ? left : right;
        found_ = Mismatch{before + " " + power_name(*first.power) + " " + between + " " + power_name(*second.power) + ": " + quoted(first) + " and " +
                              quoted(second),
                          mend_of(*left.power, *right.power)};
        return both;
    }

    Part choice() {
        Part part = either();
        if (!take("?")) return part;
        const Part yes = choice();
        take(":");
        const Part no = choice();
        const Part both = together(yes, no, "gives", "or");
        return {both.power, part.from, end_of_last()};
    }

    Part joined(const char* sign, Part (PowerReader::*lower)()) {
        Part part = (this->*lower)();
        while (take(sign)) {
            (this->*lower)();
            part = {0, part.from, end_of_last()};
        }
        return part;
    }
    Part either() { return joined("||", &PowerReader::also); }
    Part also() { return joined("&&", &PowerReader::comparison); }

    Part comparison() {
        const Part left = sum();
        for (const char* sign : {"<=", ">=", "==", "!=", "<", ">"})
            if (take(sign)) {
                const Part right = sum();
                together(left, right, "compares", "with");
                return {0, left.from, right.to};
            }
        return left;
    }

    Part sum() {
        Part part = product();
        while (at("+") || at("-")) {
            const bool adds = words_[next_++].text == "+";
            const Part right = product();
            const Part both = adds ? together(part, right, "adds", "to") : together(right, part, "takes", "from");
            part = {both.power, part.from, end_of_last()};
        }
        return part;
    }

    Part product() {
        Part part = signed_part();
        const std::size_t from = part.from;
        while (at("*") || at("/")) {
            const double sign = words_[next_++].text == "*" ? 1 : -1;
            const Part right = signed_part();
            std::optional<double> power;
            if (part.power && right.power) power = *part.power + sign * *right.power;
            part = {power, from, right.to};
        }
        return part;
    }

    Part signed_part() {
        const std::size_t from = next_ < words_.size() ? words_[next_].at : text_.size();
        if (take("-")) {
            const Part part = signed_part();
            return {part.power, from, part.to};
        }
        return primary(from);
    }

    Part primary(std::size_t from) {
        if (next_ >= words_.size()) return {std::nullopt, from, from};
        const Word word = words_[next_++];
        if (word.text == "(") {
            const Part inside = choice();
            take(")");
            return {inside.power, from, end_of_last()};
        }
        if (word.kind == Word::Kind::number)
            return {word.text.find_first_not_of("0.") == std::string::npos ? std::nullopt : std::optional<double>(0), from, end_of_last()};
        if (take("(")) return call(word.text, from);
        const auto kind = kind_(word.text);
        if (!kind || *kind == Kind::nothing) return {std::nullopt, from, end_of_last()};
        return {*kind == Kind::length ? 1.0 : 0.0, from, end_of_last()};
    }

    Part call(const std::string& function, std::size_t from) {
        Part part = choice();
        while (take(",")) part = together(part, choice(), function == "min" ? "takes the smaller of" : "takes the larger of", "and");
        take(")");
        const Part whole{part.power, from, end_of_last()};
        if (function == "sqrt") return {part.power ? std::optional(*part.power / 2) : std::nullopt, from, whole.to};
        if (function != "ceil" && function != "floor" && function != "strands_across") return whole;
        if (!found_ && part.power && *part.power != 0)
            found_ = Mismatch{"asks " + function + " for " + power_name(*part.power) + ": " + quoted(part), "divide it by a length first"};
        return {0, from, whole.to};
    }

    const std::string& text_;
    const std::vector<Word> words_;
    const std::function<std::optional<Kind>(const std::string&)>& kind_;
    std::size_t next_ = 0;
    std::optional<Mismatch> found_;
};

}  // namespace

std::optional<Mismatch> mismatch_in(const Asked& asked, const std::function<std::optional<Kind>(const std::string& name)>& kind) {
    return PowerReader(asked.formula->text, words_of(asked), kind).read();
}

}  // namespace qw::formulas
