// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "materials/list.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace qw;
using materials::basis_weight;

namespace {

kit::Stock stock(double grammage, const std::string& grade) { return {"s", "S", kit::Stock::Kind::paper, grammage, Length::mm(0.1), grade}; }

/// g/m² of so many pounds.
double grammage(double pounds, const std::string& grade) { return pounds / basis_weight(1, grade); }

struct Row {
    double pounds;
    std::string grade;
    double grammage, margin;   ///< as published
};

/// Weights on the shelf, as a handful of shops have them; not the project's own list.
kit::Pipeline shelf() {
    kit::Pipeline p;
    p.sold_weights = {{"bond", {20, 24, 28, 32}}, {"text", {50, 60, 70, 80, 100}}, {"cover", {65, 80, 100}}, {"index", {90, 110, 140}}};
    return p;
}

std::string on_the_shelf(double grammage, const std::string& grade) { return materials::weight_text(stock(grammage, grade), shelf()); }

}  // namespace

// 500 sheets of the basic size; 1 lb = 453.59237 g and 1 in = 25.4 mm exactly (1959 agreement, from memory).
TEST_CASE("pounds for a gramme a square metre follow from the basic size") {
    // To six places derived; to three as printed by printwiki, "Grammage": bond 0.266, text 0.675, cover 0.370.
    CHECK(basis_weight(1, "bond") == Approx(0.265977).margin(5e-7));
    CHECK(basis_weight(1, "bond") == Approx(0.266).margin(0.0005));
    CHECK(basis_weight(1, "text") == Approx(0.675609).margin(5e-7));
    CHECK(basis_weight(1, "text") == Approx(0.675).margin(0.001));   // printed 0.675, cut off and not rounded
    CHECK(basis_weight(1, "cover") == Approx(0.369807).margin(5e-7));
    CHECK(basis_weight(1, "cover") == Approx(0.370).margin(0.0005));
    // The index size 25½ × 30½ in: mcgpaper.com, paper weights and conversion tables; the factor is derived.
    CHECK(basis_weight(1, "index") == Approx(0.553110).margin(5e-7));
}

TEST_CASE("grammes for a pound are the published ones") {
    // printwiki, "Grammage": 3.760, 1.480, 2.704.
    CHECK(grammage(1, "bond") == Approx(3.760).margin(0.0005));
    CHECK(grammage(1, "text") == Approx(1.480).margin(0.0005));
    CHECK(grammage(1, "cover") == Approx(2.704).margin(0.0005));
    CHECK(grammage(1, "index") == Approx(1.807958).margin(5e-7));  // derived
    // paperspecs.com: g/m² = lb × 1406.5 ÷ square inches; rounded high by 0.026 %.
    CHECK(grammage(1, "cover") * 20 * 26 == Approx(1406.5).epsilon(0.0003));
}

TEST_CASE("papers that are sold by the pound have the published grammages") {
    const std::vector<Row> rows{
        {16, "bond", 60.2, 0.05},      // mcgpaper.com, paper weights and conversion tables
        {18, "bond", 67.72, 0.05},     // the same
        {20, "bond", 75.2, 0.05},      // the same; printwiki, "Grammage"; bizfluent.com, converting paper weights
        {24, "bond", 90.3, 0.1},       // mcgpaper.com
        {28, "bond", 105.35, 0.1},     // the same
        {32, "bond", 120, 0.5},        // fcidigital.com, paper specifications
        {50, "cover", 135, 0.5},       // timesprinters.com, paper sizes
        {50, "text", 74, 0.5},         // the same
        {65, "cover", 176, 0.5},       // from memory
        {80, "cover", 216, 0.5},       // from memory
        {100, "cover", 271, 1},        // coastalprint.com, g/m² to pounds; 270.41 rounded up
        {110, "index", 199, 0.5},      // the same
        {70, "text", 103.6, 0.05},     // printwiki, "Grammage"
        {70, "text", 104, 0.5},        // blog.possupply.com, paper caliper and basis weight
    };
    for (const Row& row : rows) {
        CAPTURE(row.pounds, row.grade);
        CHECK(grammage(row.pounds, row.grade) == Approx(row.grammage).margin(row.margin));
        CHECK(basis_weight(row.grammage, row.grade) == Approx(row.pounds).epsilon(0.005));
    }
}

TEST_CASE("grammages in pounds, derived from the basic sizes") {
    CHECK(basis_weight(160, "cover") == Approx(59.17).margin(0.005));
    CHECK(basis_weight(160, "text") == Approx(108.10).margin(0.005));
    CHECK(basis_weight(160, "index") == Approx(88.50).margin(0.005));
    CHECK(basis_weight(200, "cover") == Approx(73.96).margin(0.005));
    CHECK(basis_weight(200, "index") == Approx(110.62).margin(0.005));
    CHECK(basis_weight(120, "bond") == Approx(31.92).margin(0.005));
    CHECK(basis_weight(120, "text") == Approx(81.07).margin(0.005));
    CHECK(basis_weight(120, "cover") == Approx(44.38).margin(0.005));
    CHECK(grammage(80, "text") == Approx(118.41).margin(0.005));
    CHECK(basis_weight(103.6, "text") == Approx(69.93).margin(0.1));  // printwiki's worked example: 103.6 × 0.675 = 69.93
}

// A paper dealer's weight and caliper chart, "guide only": each row names one paper in four grades.
TEST_CASE("four grades of one paper have about the same grammage") {
    const double rows[][4] = {{47, 120, 65, 97}, {53, 135, 74, 110}, {58, 146, 80, 120}, {72, 183, 100, 150}};
    for (const auto& row : rows) {
        CAPTURE(row[2]);
        const double cover = grammage(row[2], "cover");
        CHECK(grammage(row[0], "bond") == Approx(cover).epsilon(0.015));
        CHECK(grammage(row[1], "text") == Approx(cover).epsilon(0.015));
        CHECK(grammage(row[3], "index") == Approx(cover).epsilon(0.015));
    }
}

TEST_CASE("a letter ream of 20 lb bond weighs a quarter of 20 lb, because 17 x 22 in cuts into four") {
    const double letter = 8.5 * 11 * 0.0254 * 0.0254;
    CHECK(grammage(20, "bond") * letter * 500 / 453.59237 == Approx(5).epsilon(1e-12));
}

TEST_CASE("grammage comes first, then the pounds with their grade") {
    const kit::Pipeline none;  // nothing is known of what is sold
    CHECK(materials::weight_text(stock(160, "cover"), none) == "160 g/m² (59 lb cover)");
    CHECK(materials::weight_text(stock(75.2, "bond"), none) == "75.2 g/m² (20 lb bond)");
    CHECK(materials::weight_text(stock(615, ""), none) == "615 g/m²");
    CHECK(materials::weight_text(stock(1290, ""), shelf()) == "1290 g/m²");
}

TEST_CASE("where the pounds are not sold the nearest that are stand beside them") {
    CHECK(on_the_shelf(160, "cover") == "160 g/m² (59 lb cover; on the shelf: 65 lb)");
    CHECK(on_the_shelf(200, "cover") == "200 g/m² (74 lb cover; on the shelf: 80 lb)");
    CHECK(on_the_shelf(300, "cover") == "300 g/m² (111 lb cover; on the shelf: 100 lb)");
    CHECK(on_the_shelf(80, "bond") == "80 g/m² (21 lb bond; on the shelf: 20 lb)");
    CHECK(on_the_shelf(100, "bond") == "100 g/m² (27 lb bond; on the shelf: 28 lb)");
    CHECK(on_the_shelf(120, "text") == "120 g/m² (81 lb text; on the shelf: 80 lb)");
    // Sold themselves, once rounded to whole pounds.
    CHECK(on_the_shelf(120, "bond") == "120 g/m² (32 lb bond)");
    CHECK(on_the_shelf(75.2, "bond") == "75.2 g/m² (20 lb bond)");
    CHECK(on_the_shelf(176, "cover") == "176 g/m² (65 lb cover)");
    CHECK(on_the_shelf(199, "index") == "199 g/m² (110 lb index)");
    // Half-way between two the heavier.
    kit::Pipeline two;
    two.sold_weights["bond"] = {20, 24};
    CHECK(materials::weight_text(stock(grammage(22, "bond"), "bond"), two) == "82.71 g/m² (22 lb bond; on the shelf: 24 lb)");
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
