// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/numbers.h"

#include "base/fault.h"

#include <charconv>
#include <cmath>

namespace qw::pdf {

namespace {

std::string trimmed(std::string text) {
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

void must_be_finite(double value) {
    if (!std::isfinite(value))
        throw Fault(FaultKind::not_carried_out, {"number-not-finite", {}, "a place on a page is no finite number", "", ""});
}

}  // namespace

std::string number(Length length) {
    constexpr std::int64_t millionths = 1'000'000;
    constexpr std::int64_t per_point = Length::units_per_point;
    const std::int64_t units = length.in_units();
    const std::uint64_t size = static_cast<std::uint64_t>(units < 0 ? -units : units);
    // Whole points apart, so that the product cannot overflow however long the length.
    const std::uint64_t whole = size / per_point, rest = size % per_point;
    const std::uint64_t parts = (rest * millionths + per_point / 2) / per_point;
    std::string decimals = std::to_string(millionths + static_cast<std::int64_t>(parts));  // "1dddddd", or "2000000" for a carry
    const std::uint64_t carried = decimals[0] == '2' ? whole + 1 : whole;
    return trimmed((units < 0 ? "-" : "") + std::to_string(carried) + "." + decimals.substr(1));
}

std::string number(double value) {
    must_be_finite(value);
    char text[352];
    const auto [end, error] = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, 8);
    return trimmed(std::string(text, error == std::errc() ? end : text));
}

std::string exact_number(double value) {
    must_be_finite(value);
    char text[352];
    const auto [end, error] = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed);
    return trimmed(std::string(text, error == std::errc() ? end : text));
}

std::string numbers(Point point) { return number(point.x) + " " + number(point.y); }

std::string numbers(const Matrix& m) {
    return number(m.a) + " " + number(m.b) + " " + number(m.c) + " " + number(m.d) + " " + number(m.e) + " " + number(m.f);
}

}  // namespace qw::pdf
