// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/likeness_rules.h"

#include "checks/said_of_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace qw::checks {

namespace {

/// A picture's darkness on a grid of 24 × 24, so that pictures of any size can be compared.
std::array<double, 576> reduced(const InkMap& map) {
    std::array<double, 576> grid{};
    for (std::size_t y = 0; y < 24; ++y)
        for (std::size_t x = 0; x < 24; ++x) {
            const auto from = [](std::size_t at, std::uint32_t cells) { return static_cast<std::uint32_t>(at * cells / 24); };
            double sum = 0;
            std::size_t n = 0;
            for (std::uint32_t row = from(y, map.rows); row < std::max(from(y + 1, map.rows), from(y, map.rows) + 1); ++row)
                for (std::uint32_t column = from(x, map.columns); column < std::max(from(x + 1, map.columns), from(x, map.columns) + 1); ++column, ++n)
                    sum += map.mean[map.at(column, row)];
            grid[y * 24 + x] = sum / static_cast<double>(n);
        }
    return grid;
}

double apart(const std::array<double, 576>& a, const std::array<double, 576>& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += std::abs(a[i] - b[i]);
    return sum / static_cast<double>(a.size());
}

void check_twice(const Rules& rules, const std::vector<PictureSeen>& all, Findings& findings) {
    std::vector<std::array<double, 576>> grids;
    for (const PictureSeen& picture : all) grids.push_back(picture.ink->map.columns ? reduced(picture.ink->map) : std::array<double, 576>{});
    for (std::size_t i = 0; i < all.size(); ++i) {
        rules.tried("artwork-twice");
        rules.tried("artwork-nearly-twice");
        for (std::size_t k = 0; k < i; ++k) {
            if (all[i].shown == all[k].shown || all[i].ink->box.empty() || all[k].ink->box.empty()) continue;
            const bool same_pixels = all[i].width == all[k].width && all[i].height == all[k].height && !all[i].pixels.empty() && all[i].pixels == all[k].pixels;
            if (all[i].sha256 == all[k].sha256 || same_pixels) {
                rules.say(findings, of_picture("artwork-twice", all[i].shown, 0, "as " + all[k].shown, "each picture once", "Two files show the same picture",
                                               "Look whether one of them was meant to be another picture; where both are meant, name one file twice"));
                break;
            }
            const double difference = apart(grids[i], grids[k]);
            if (difference >= rules.limit("artwork-nearly-twice") || all[i].set != all[k].set) continue;
            rules.say(findings, of_picture("artwork-nearly-twice", all[i].shown, 0, in_digits(difference, "%.2f") + " of 255 levels from " + all[k].shown,
                                           in_digits(rules.limit("artwork-nearly-twice"), "%g"), "Two pictures are almost the same",
                                           "Look whether one of them is an earlier state of the other"));
            break;
        }
    }
}

}  // namespace

void check_pictures_together(const Rules& rules, const std::vector<PictureSeen>& all, Findings& findings) {
    check_twice(rules, all, findings);
    for (const PictureSeen& picture : all) {
        rules.tried("artwork-sizes-alike");
        const auto of_set = [&](const PictureSeen& other) { return other.set == picture.set; };
        const auto longer = [](const PictureSeen& one) { return std::max(one.width, one.height); };
        const auto shorter = [](const PictureSeen& one) { return std::min(one.width, one.height); };
        const auto same = [&](const PictureSeen& other) { return of_set(other) && longer(other) == longer(picture) && shorter(other) == shorter(picture); };
        const auto in_set = std::count_if(all.begin(), all.end(), of_set), alike = std::count_if(all.begin(), all.end(), same);
        if (in_set < 3 || alike * 2 >= in_set) continue;
        rules.say(findings, of_picture("artwork-sizes-alike", picture.shown, 0, std::to_string(picture.width) + " x " + std::to_string(picture.height) + " pixels",
                                       "as most of set " + picture.set, "It has another number of pixels than the rest of its set",
                                       "Export it as the others were exported"));
    }
}

}  // namespace qw::checks
