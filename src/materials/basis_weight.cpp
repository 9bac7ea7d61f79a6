// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "materials/list.h"

#include <cmath>
#include <cstdio>

namespace qw::materials {

namespace {

/// The sheet of which a grade's weight counts 500.
struct Grade {
    const char* name;
    double width_in, height_in;
};
constexpr Grade grades[] = {{"bond", 17, 22}, {"text", 25, 38}, {"cover", 20, 26}, {"index", 25.5, 30.5}};

constexpr double sheets_of_a_ream = 500, grams_of_a_pound = 453.59237, metres_of_an_inch = 0.0254;

}  // namespace

double basis_weight(double grams_per_square_metre, const std::string& grade) {
    std::vector<std::string> known;
    for (const Grade& g : grades) {
        if (grade == g.name) {
            const double area = g.width_in * g.height_in * metres_of_an_inch * metres_of_an_inch;
            return grams_per_square_metre * area * sheets_of_a_ream / grams_of_a_pound;
        }
        known.push_back(g.name);
    }
    const std::optional<std::string> nearest = nearest_word(grade, known);
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-grade", {}, "there is no paper grade '" + grade + "'", listed(known),
                                                     nearest ? "write '" + *nearest + "'" : ""});
}

namespace {

/// What a shop has that is nearest, the heavier of two that are equally near; nothing where those pounds are sold
/// themselves or nothing is known of what is sold.
std::optional<int> nearest_sold(double pounds, const std::string& grade, const kit::Pipeline& pipeline) {
    const auto sold = pipeline.sold_weights.find(grade);
    if (sold == pipeline.sold_weights.end()) return std::nullopt;
    std::optional<int> nearest;
    for (const int one : sold->second)
        if (!nearest || std::abs(one - pounds) <= std::abs(*nearest - pounds)) nearest = one;
    return nearest == std::lround(pounds) ? std::nullopt : nearest;
}

}  // namespace

std::string weight_text(const kit::Stock& stock, const kit::Pipeline& pipeline) {
    char grams[32];
    std::snprintf(grams, sizeof grams, "%.4g g/m²", stock.grammage);
    if (stock.grade.empty()) return grams;
    const double pounds = basis_weight(stock.grammage, stock.grade);
    const std::optional<int> sold = nearest_sold(pounds, stock.grade, pipeline);
    return std::string(grams) + " (" + std::to_string(std::lround(pounds)) + " lb " + stock.grade +
           (sold ? "; on the shelf: " + std::to_string(*sold) + " lb" : "") + ")";
}

}  // namespace qw::materials
