// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/numbers.h"

#include "base/fault.h"

#include <catch2/catch.hpp>

#include <clocale>
#include <cstdlib>
#include <limits>
#include <locale>

using namespace qw;
using namespace qw::literals;
using pdf::exact_number;
using pdf::number;
using pdf::numbers;

TEST_CASE("lengths are written in points, short and without loss") {
    CHECK(number(0_mm) == "0");
    CHECK(number(8.5_in) == "612");
    CHECK(number(11_in) == "792");
    // ISO 216 A4, 210 x 297 mm, at 72 points to 25.4 mm.
    CHECK(number(210_mm) == "595.275591");
    CHECK(number(297_mm) == "841.889764");
    CHECK(number(Length::points(0.5)) == "0.5");
    CHECK(number(-Length::points(0.25)) == "-0.25");
    CHECK(number(Length::units(1)) == "0.000079");
    CHECK(number(-Length::units(1)) == "-0.000079");
    CHECK(number(Length::units(12699)) == "0.999921");
    CHECK(number(Length::units(std::int64_t{1} << 60)).substr(0, 14) == "90781220835184");
}

TEST_CASE("plain numbers are written short, without exponent, and are finite") {
    CHECK(number(1.0) == "1");
    CHECK(number(-0.0) == "0");
    CHECK(number(-1e-12) == "0");
    CHECK(number(0.914512345) == "0.91451235");
    CHECK(number(1e20) == "100000000000000000000");
    CHECK(exact_number(0.00048828125) == "0.00048828125");
    CHECK(std::strtod(exact_number(0.1 + 0.2).c_str(), nullptr) == 0.1 + 0.2);
    CHECK(exact_number(12) == "12");
    CHECK_THROWS_AS(number(std::numeric_limits<double>::quiet_NaN()), Fault);
    CHECK_THROWS_AS(number(std::numeric_limits<double>::infinity()), Fault);
    CHECK(numbers(Matrix{1, 0, 0, -1, 0, 72.5}) == "1 0 0 -1 0 72.5");
}

TEST_CASE("numbers have points in every locale") {
    REQUIRE(std::setlocale(LC_ALL, "de_DE.UTF-8"));
    const std::string written = number(2.5) + " " + number(Length::points(2.5));
    std::setlocale(LC_ALL, "C");
    CHECK(written == "2.5 2.5");
}
