// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/done.h"

#include "base/words.h"

#include <cstdio>

namespace qw::artwork {

namespace {

/// Twice what can just be seen side by side; rounding to whole levels alone comes to about 1.
constexpr double seen_to_move = 2;

std::string conversion(const Facts& facts) {
    std::string text = "converted from " + facts.converted_from + " to sRGB";
    if (facts.farthest_move < seen_to_move) return text;
    char moves[64];
    std::snprintf(moves, sizeof moves, " (colours that sRGB lacks move by up to %.0f CIEDE2000)", facts.farthest_move);
    return text + moves;
}

std::string turning(const Facts& facts) { return "turned by its EXIF orientation " + std::to_string(facts.turn); }

}  // namespace

void tell_conversion(const Profile& profile, Facts& facts) {
    facts.converted_from = profile.name();
    facts.farthest_move = profile.farthest_move();
}

std::string done_to(const Facts& facts) {
    if (!facts.damage.empty()) return "";
    if (facts.passage == Passage::through) return "passed through" + (facts.turn == 1 ? "" : ", " + turning(facts) + " in the matrix");
    std::vector<std::string> steps;
    if (facts.interlaced) steps.push_back("put in the order of its rows");
    if (!facts.converted_from.empty()) steps.push_back(conversion(facts));
    if (facts.alpha) steps.push_back("flattened on white");
    if (facts.bits == 16) steps.push_back("rounded from 16 bits to 8");
    if (facts.turn != 1) steps.push_back(turning(facts));
    steps.push_back("packed again");
    return listed(steps, "and");
}

}  // namespace qw::artwork
