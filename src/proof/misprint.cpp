// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/misprint.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <utility>

namespace qw::proof {

namespace {

double growth(Length enlarged, Length across) { return 1 + 2 * (enlarged / across); }

/// A column or row of the page's pixels: how far from the edge where they begin and from the other its middle lies,
/// whether it leaves the sheet over either, and whether it lies in the safe area.
struct Line {
    Length in[2];
    bool off[2];
    bool safe;
};

std::vector<Line> lines(Length across, std::uint32_t pixels, const Misprint& misprint, Length safe_area) {
    std::vector<Line> all(pixels);
    const Length lost = reach(misprint, across);
    for (std::uint32_t i = 0; i < pixels; ++i) {
        const Length start = across * ((i + 0.5) / pixels), end = across - start;
        all[i] = {{start, end}, {start < lost, end < lost}, min(start, end) >= safe_area};
    }
    return all;
}

std::uint32_t darkness(const std::uint8_t* rgb) { return 255 - (299u * rgb[0] + 587u * rgb[1] + 114u * rgb[2] + 500u) / 1000u; }

/// What one corner takes.
struct Loss {
    std::uint64_t ink = 0, safe_ink = 0;
    Length deepest;
};

struct Losses {
    std::uint64_t ink = 0, safe_ink = 0;  ///< of the whole page
    Loss corner[2][2];                    ///< [towards the end of the rows][towards the last row]
};

void count(Losses& losses, const Line& column, const Line& row, std::uint32_t dark) {
    const bool safe = column.safe && row.safe;
    losses.ink += dark;
    losses.safe_ink += safe ? dark : 0;
    if (!column.off[0] && !column.off[1] && !row.off[0] && !row.off[1]) return;
    for (int i = 0; i < 2; ++i)
        for (int j = 0; j < 2; ++j) {
            if (!column.off[i] && !row.off[j]) continue;
            Loss& loss = losses.corner[i][j];
            loss.ink += dark;
            loss.safe_ink += safe ? dark : 0;
            // Off over one edge it was as far in as that edge says; over both, as the nearer one.
            const Length in = !row.off[j] ? column.in[i] : !column.off[i] ? row.in[j] : min(column.in[i], row.in[j]);
            loss.deepest = max(loss.deepest, in);
        }
}

Losses losses_of(const Pixels& page, const std::vector<Line>& columns, const std::vector<Line>& rows) {
    Losses losses;
    const std::uint8_t* rgb = page.rgb.data();
    for (const Line& row : rows)
        for (const Line& column : columns) {
            const std::uint32_t dark = darkness(rgb);
            rgb += 3;
            if (dark >= ink_threshold) count(losses, column, row, dark);
        }
    return losses;
}

double share(std::uint64_t part, std::uint64_t whole) { return whole == 0 ? 0 : static_cast<double>(part) / static_cast<double>(whole); }

/// For each pixel of the sheet along one axis the page's pixel that is printed there, or -1.
std::vector<std::int64_t> printed_from(std::uint32_t pixels, Length across, Length enlarged, Length towards_end) {
    std::vector<std::int64_t> from(pixels);
    const double factor = growth(enlarged, across), moved = towards_end / across * pixels, middle = pixels / 2.0;
    for (std::uint32_t i = 0; i < pixels; ++i) {
        const double at = std::floor((i + 0.5 - moved - middle) / factor + middle);
        from[i] = at < 0 || at >= pixels ? -1 : static_cast<std::int64_t>(at);
    }
    return from;
}

}  // namespace

Length reach(const Misprint& misprint, Length across) { return misprint.farthest() / growth(misprint.enlarged, across); }

Length outward_move(const Misprint& misprint, Length across, Length from_edge) {
    return misprint.enlarged * (1 - 2 * (from_edge / across)) + misprint.shifted;
}

Misprinted misprint(const Pixels& page, Size sheet, Length safe_area, const Misprint& misprint) {
    const Losses losses = losses_of(page, lines(sheet.width, page.width, misprint, safe_area), lines(sheet.height, page.height, misprint, safe_area));
    int right = 0, low = 0;
    const auto rank = [&](int i, int j) {
        const Loss& loss = losses.corner[i][j];
        return std::pair(loss.safe_ink, loss.ink);
    };
    for (int i = 0; i < 2; ++i)
        for (int j = 0; j < 2; ++j)
            if (rank(i, j) > rank(right, low)) right = i, low = j;
    const Loss& worst = losses.corner[right][low];

    Misprinted result;
    result.aside = {right ? misprint.shifted : -misprint.shifted, low ? -misprint.shifted : misprint.shifted};
    result.lost = share(worst.ink, losses.ink);
    result.lost_safe = share(worst.safe_ink, losses.safe_ink);
    result.deepest = worst.deepest;
    result.move = max(outward_move(misprint, sheet.width, safe_area), outward_move(misprint, sheet.height, safe_area));
    result.bare = max(Length(), misprint.shifted - misprint.enlarged);
    return result;
}

Pixels printed_aside(const Pixels& page, Size sheet, Length enlarged, const Aside& aside) {
    const auto from_x = printed_from(page.width, sheet.width, enlarged, aside.right);
    const auto from_y = printed_from(page.height, sheet.height, enlarged, -aside.up);
    Pixels printed{page.width, page.height, std::vector<std::uint8_t>(page.rgb.size(), 255)};
    for (std::uint32_t y = 0; y < page.height; ++y) {
        if (from_y[y] < 0) continue;
        const std::uint8_t* row = &page.rgb[static_cast<std::size_t>(from_y[y]) * page.width * 3];
        std::uint8_t* to = &printed.rgb[std::size_t{y} * page.width * 3];
        for (std::uint32_t x = 0; x < page.width; ++x)
            if (from_x[x] >= 0) std::memcpy(to + 3 * x, row + 3 * from_x[x], 3);
    }
    return printed;
}

}  // namespace qw::proof
