// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace qw {

/// A length on paper. Held as a whole number of 1/36000 mm, the largest unit in which 1 in (25.4 mm exactly,
/// international yard and pound agreement of 1959), 1 pt (1/72 in, ISO 32000-1 8.3.2.3) and 1/100 mm (the unit of
/// IPP media margins, PWG 5101.1) are all whole numbers; sums of such lengths are therefore exact.
/// Range: about ±2.5e11 m; the readers refuse anything above 100 m long before.
class Length {
public:
    constexpr Length() = default;

    static constexpr Length mm(double value) { return Length(rounded(value * units_per_mm)); }
    static constexpr Length inches(double value) { return Length(rounded(value * units_per_inch)); }
    static constexpr Length points(double value) { return Length(rounded(value * units_per_point)); }
    /// IPP and PWG give sizes and margins in 1/100 mm.
    static constexpr Length hundredths_mm(std::int64_t value) { return Length(value * (units_per_mm / 100)); }
    static constexpr Length units(std::int64_t value) { return Length(value); }

    constexpr double in_mm() const { return static_cast<double>(units_) / units_per_mm; }
    constexpr double in_inches() const { return static_cast<double>(units_) / units_per_inch; }
    constexpr double in_points() const { return static_cast<double>(units_) / units_per_point; }
    constexpr std::int64_t in_units() const { return units_; }

    constexpr Length operator-() const { return Length(-units_); }
    constexpr Length& operator+=(Length other) { units_ += other.units_; return *this; }
    constexpr Length& operator-=(Length other) { units_ -= other.units_; return *this; }
    friend constexpr Length operator+(Length a, Length b) { return Length(a.units_ + b.units_); }
    friend constexpr Length operator-(Length a, Length b) { return Length(a.units_ - b.units_); }
    friend constexpr Length operator*(Length a, double factor) { return Length(rounded(static_cast<double>(a.units_) * factor)); }
    friend constexpr Length operator*(double factor, Length a) { return a * factor; }
    friend constexpr Length operator/(Length a, double divisor) { return Length(rounded(static_cast<double>(a.units_) / divisor)); }
    friend constexpr double operator/(Length a, Length b) { return static_cast<double>(a.units_) / static_cast<double>(b.units_); }
    friend constexpr auto operator<=>(Length, Length) = default;

    static constexpr std::int64_t units_per_mm = 36000;
    static constexpr std::int64_t units_per_inch = 914400;
    static constexpr std::int64_t units_per_point = 12700;

private:
    constexpr explicit Length(std::int64_t value) : units_(value) {}
    static constexpr std::int64_t rounded(double value) {
        return static_cast<std::int64_t>(value < 0 ? value - 0.5 : value + 0.5);
    }
    std::int64_t units_ = 0;
};

constexpr Length min(Length a, Length b) { return a < b ? a : b; }
constexpr Length max(Length a, Length b) { return a < b ? b : a; }
constexpr Length abs(Length a) { return a < Length() ? -a : a; }

namespace literals {
constexpr Length operator""_mm(long double value) { return Length::mm(static_cast<double>(value)); }
constexpr Length operator""_mm(unsigned long long value) { return Length::mm(static_cast<double>(value)); }
constexpr Length operator""_in(long double value) { return Length::inches(static_cast<double>(value)); }
constexpr Length operator""_in(unsigned long long value) { return Length::inches(static_cast<double>(value)); }
constexpr Length operator""_pt(long double value) { return Length::points(static_cast<double>(value)); }
constexpr Length operator""_pt(unsigned long long value) { return Length::points(static_cast<double>(value)); }
}  // namespace literals

}  // namespace qw
