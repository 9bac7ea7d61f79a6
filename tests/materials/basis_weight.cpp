// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "materials/list.h"

#include <catch2/catch.hpp>

using namespace qw;
using materials::basis_weight;

namespace {

kit::Stock stock(double grammage, const std::string& grade) { return {"s", "S", kit::Stock::Kind::paper, grammage, Length::mm(0.1), grade}; }

/// g/m² of so many pounds.
double grammage(double pounds, const std::string& grade) { return pounds / basis_weight(1, grade); }

}  // namespace

// 500 sheets of the basic size; 1 lb = 453.59237 g and 1 in = 25.4 mm exactly (1959 agreement, from memory).
// Factors to six places: printwiki, "Grammage", prints 0.266, 0.675 and 0.370 for bond, text and cover.
TEST_CASE("pounds for a gramme a square metre follow from the basic size") {
    CHECK(basis_weight(1, "bond") == Approx(0.265977).margin(5e-7));
    CHECK(basis_weight(1, "text") == Approx(0.675609).margin(5e-7));
    CHECK(basis_weight(1, "cover") == Approx(0.369807).margin(5e-7));
    CHECK(basis_weight(1, "index") == Approx(0.553110).margin(5e-7));
}

TEST_CASE("worked rows of basis weights") {
    CHECK(basis_weight(160, "cover") == Approx(59.17).margin(0.005));   // common practice, no source: 160 g/m² is 59 lb cover
    CHECK(basis_weight(160, "text") == Approx(108.10).margin(0.005));   // derived from the basic sizes
    CHECK(basis_weight(160, "index") == Approx(88.50).margin(0.005));
    CHECK(basis_weight(120, "bond") == Approx(31.92).margin(0.005));
    CHECK(basis_weight(120, "text") == Approx(81.07).margin(0.005));
    CHECK(basis_weight(120, "cover") == Approx(44.38).margin(0.005));
    CHECK(basis_weight(200, "cover") == Approx(73.96).margin(0.005));
    CHECK(basis_weight(200, "index") == Approx(110.62).margin(0.005));
    CHECK(grammage(20, "bond") == Approx(75.19).margin(0.005));
    CHECK(grammage(20, "bond") == Approx(75.2).margin(0.05));           // printwiki, "Grammage"
    CHECK(grammage(24, "bond") == Approx(90.23).margin(0.005));
    CHECK(grammage(28, "bond") == Approx(105.27).margin(0.005));
    CHECK(grammage(32, "bond") == Approx(120.31).margin(0.005));
    CHECK(grammage(65, "cover") == Approx(175.77).margin(0.005));
    CHECK(grammage(80, "cover") == Approx(216.33).margin(0.005));
    CHECK(grammage(110, "index") == Approx(198.88).margin(0.005));
    CHECK(grammage(70, "text") == Approx(103.61).margin(0.005));
    CHECK(basis_weight(103.6, "text") == Approx(70).margin(0.05));      // printwiki, worked example
}

TEST_CASE("a letter ream of 20 lb bond weighs a quarter of 20 lb, because 17 x 22 in cuts into four") {
    const double letter = 8.5 * 11 * 0.0254 * 0.0254;
    CHECK(grammage(20, "bond") * letter * 500 / 453.59237 == Approx(5).epsilon(1e-12));
}

TEST_CASE("grammage comes first, then the pounds with their grade") {
    CHECK(materials::weight_text(stock(160, "cover")) == "160 g/m² (59 lb cover)");
    CHECK(materials::weight_text(stock(80, "bond")) == "80 g/m² (21 lb bond)");
    CHECK(materials::weight_text(stock(75.2, "bond")) == "75.2 g/m² (20 lb bond)");
    CHECK(materials::weight_text(stock(615, "")) == "615 g/m²");
    CHECK(materials::weight_text(stock(1290, "")) == "1290 g/m²");
}

TEST_CASE("an unknown grade is refused with the nearest one") {
    try {
        basis_weight(80, "bund");
        FAIL("was not refused");
    } catch (const Fault& fault) {
        CHECK(fault.notes().at(0).code == "unknown-grade");
        CHECK(fault.notes().at(0).mend == "write 'bond'");
    }
}
