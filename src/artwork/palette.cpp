// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/palette.h"

#include "artwork/darkness.h"
#include "base/ink_map.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace qw::artwork {

namespace {

constexpr int most_rounds = 50;

/// Pixels of nearly one colour.
struct Bin {
    std::uint64_t red = 0, green = 0, blue = 0, pixels = 0;
    Lab lab;

    void add(const Bin& other) {
        red += other.red;
        green += other.green;
        blue += other.blue;
        pixels += other.pixels;
    }
    Swatch mean() const {
        const auto rounded = [&](std::uint64_t sum) { return static_cast<std::uint8_t>((sum + pixels / 2) / pixels); };
        return {rounded(red), rounded(green), rounded(blue), 0};
    }
};

double square_of_distance(const Lab& a, const Lab& b) { return (a.l - b.l) * (a.l - b.l) + (a.a - b.a) * (a.a - b.a) + (a.b - b.b) * (a.b - b.b); }

std::vector<Bin> bins_of(std::span<const std::uint8_t> rgb) {
    std::vector<Bin> all(16 * 16 * 16);
    for (std::size_t i = 0; i + 3 <= rgb.size(); i += 3) {
        const std::uint8_t r = rgb[i], g = rgb[i + 1], b = rgb[i + 2];
        if (darkness_of(r, g, b) < ink_threshold) continue;
        all[(static_cast<std::size_t>(r) >> 4) << 8 | (static_cast<std::size_t>(g) >> 4) << 4 | b >> 4].add({r, g, b, 1, {}});
    }
    std::erase_if(all, [](const Bin& bin) { return bin.pixels == 0; });
    for (Bin& bin : all) bin.lab = bin.mean().lab();
    return all;
}

std::size_t nearest(const std::vector<Lab>& centres, const Lab& lab) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < centres.size(); ++i)
        if (square_of_distance(centres[i], lab) < square_of_distance(centres[best], lab)) best = i;
    return best;
}

std::vector<Lab> beginnings(const std::vector<Bin>& bins, std::size_t most) {
    std::vector<Lab> centres{std::max_element(bins.begin(), bins.end(), [](const Bin& a, const Bin& b) { return a.pixels < b.pixels; })->lab};
    while (centres.size() < std::min(most, bins.size())) {
        double farthest = 0;
        const Bin* next = nullptr;
        for (const Bin& bin : bins) {
            const double pull = static_cast<double>(bin.pixels) * square_of_distance(bin.lab, centres[nearest(centres, bin.lab)]);
            if (pull <= farthest) continue;
            farthest = pull;
            next = &bin;
        }
        if (!next) break;
        centres.push_back(next->lab);
    }
    return centres;
}

}  // namespace

std::vector<Swatch> palette_of(std::span<const std::uint8_t> rgb, std::size_t most) {
    const std::vector<Bin> bins = bins_of(rgb);
    if (bins.empty() || most == 0) return {};
    std::vector<Lab> centres = beginnings(bins, most);
    std::vector<Bin> groups;
    std::vector<std::size_t> of_bin(bins.size()), before;
    for (int round = 0; round < most_rounds && of_bin != before; ++round) {
        before = of_bin;
        groups.assign(centres.size(), {});
        std::vector<std::array<double, 3>> sums(centres.size());
        for (std::size_t i = 0; i < bins.size(); ++i) {
            of_bin[i] = nearest(centres, bins[i].lab);
            groups[of_bin[i]].add(bins[i]);
            const auto weight = static_cast<double>(bins[i].pixels);
            sums[of_bin[i]][0] += weight * bins[i].lab.l;
            sums[of_bin[i]][1] += weight * bins[i].lab.a;
            sums[of_bin[i]][2] += weight * bins[i].lab.b;
        }
        for (std::size_t i = 0; i < centres.size(); ++i) {
            const auto weight = static_cast<double>(groups[i].pixels);
            if (weight > 0) centres[i] = {sums[i][0] / weight, sums[i][1] / weight, sums[i][2] / weight};
        }
        if (round == 0) before.assign(1, std::numeric_limits<std::size_t>::max());  // the first round always moves
    }
    std::uint64_t all = 0;
    for (const Bin& group : groups) all += group.pixels;
    std::vector<Swatch> palette;
    for (const Bin& group : groups) {
        if (group.pixels == 0) continue;
        palette.push_back(group.mean());
        palette.back().share = static_cast<double>(group.pixels) / static_cast<double>(all);
    }
    std::stable_sort(palette.begin(), palette.end(), [](const Swatch& a, const Swatch& b) { return a.share > b.share; });
    return palette;
}

}  // namespace qw::artwork
