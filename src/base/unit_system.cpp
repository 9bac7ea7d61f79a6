// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/unit_system.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numeric>
#include <regex>

namespace qw {

namespace {

std::int64_t floor_div(std::int64_t a, std::int64_t b) {
    const std::int64_t q = a / b;
    return (a % b != 0 && (a % b < 0) != (b < 0)) ? q - 1 : q;
}

std::string number_metric(Length value) {
    char text[48];
    std::snprintf(text, sizeof text, "%.2f", value.in_mm());
    std::string shown = text;
    while (shown.back() == '0') shown.pop_back();
    if (shown.back() == '.') shown.pop_back();
    return shown == "-0" ? "0" : shown;
}

std::string number_us(Length value) {
    const bool negative = value < Length();
    const auto parts = static_cast<std::int64_t>(std::llround(abs(value).in_inches() * 64));
    const std::int64_t whole = parts / 64, rest = parts % 64;
    std::string shown = negative && parts ? "-" : "";
    if (whole || !rest) shown += std::to_string(whole);
    if (rest) {
        const std::int64_t common = std::gcd(rest, std::int64_t{64});
        if (whole) shown += " ";
        shown += std::to_string(rest / common) + "/" + std::to_string(64 / common);
    }
    return shown;
}

}  // namespace

Length round_to_step(Length value, Length step, Rounding way) {
    const std::int64_t v = value.in_units(), s = step.in_units();
    const std::int64_t below = floor_div(v, s) * s;
    const std::int64_t past = v - below, missing = s - past;
    const std::int64_t snap = std::min(snap_to_step.in_units(), s / 2);
    if (past <= snap) return Length::units(below);
    if (missing <= snap) return Length::units(below + s);
    switch (way) {
        case Rounding::up: return Length::units(below + s);
        case Rounding::down: return Length::units(below);
        case Rounding::nearest: break;
    }
    return Length::units(past < missing ? below : below + s);
}

std::string show_metric(Length value) { return number_metric(value) + " mm"; }
std::string show_us(Length value) { return number_us(value) + " in"; }

std::string show(Length value, UnitSystem system) {
    return system == UnitSystem::metric ? show_metric(value) : show_us(value);
}

std::string show(Length width, Length height, UnitSystem system) {
    if (system == UnitSystem::metric) return number_metric(width) + " x " + number_metric(height) + " mm";
    return number_us(width) + " x " + number_us(height) + " in";
}

std::optional<Length> read_length(const std::string& text) {
    static const std::regex form(R"(^\s*([+-]?)(?:(\d{1,7})\s+(\d{1,4})/(\d{1,4})|(\d{1,4})/(\d{1,4})|(\d{0,7}(?:\.\d{1,9})?))\s*(mm|cm|in|pt)\s*$)");
    if (text.size() > 64) return std::nullopt;
    std::smatch m;
    if (!std::regex_match(text, m, form)) return std::nullopt;
    double value = 0;
    const auto number = [&](std::size_t group) { return std::strtod(m[group].str().c_str(), nullptr); };
    if (m[2].matched) {
        if (number(4) == 0) return std::nullopt;
        value = number(2) + number(3) / number(4);
    } else if (m[5].matched) {
        if (number(6) == 0) return std::nullopt;
        value = number(5) / number(6);
    } else {
        if (m[7].length() == 0) return std::nullopt;
        value = number(7);
    }
    if (m[1] == "-") value = -value;
    const std::string unit = m[8];
    const Length read = unit == "mm"   ? Length::mm(value)
                        : unit == "cm" ? Length::mm(value * 10)
                        : unit == "in" ? Length::inches(value)
                                       : Length::points(value);
    if (abs(read) > Length::mm(100'000)) return std::nullopt;
    return read;
}

}  // namespace qw
