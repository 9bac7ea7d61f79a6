// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/misprint.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <utility>

namespace qw::proof {

namespace {

double growth(Length enlarged, Length across) { return 1 + 2 * (enlarged / across); }

/// One axis of the page in pixels: how far each pixel lies from the edge at its beginning and at its end.
class Axis {
public:
    Axis(Length across, std::uint32_t pixels, const Misprint& misprint, Length safe_area)
        : across_(across), pixels_(pixels), reach_(proof::reach(misprint, across)), safe_area_(safe_area) {}

    Length from_start(std::uint32_t pixel) const { return across_ * ((pixel + 0.5) / pixels_); }
    Length from_end(std::uint32_t pixel) const { return across_ - from_start(pixel); }
    bool leaves_start(std::uint32_t pixel) const { return from_start(pixel) < reach_; }
    bool leaves_end(std::uint32_t pixel) const { return from_end(pixel) < reach_; }
    bool safe(std::uint32_t pixel) const { return min(from_start(pixel), from_end(pixel)) >= safe_area_; }

private:
    Length across_;
    std::uint32_t pixels_;
    Length reach_, safe_area_;
};

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

void count(Losses& losses, const Axis& across, const Axis& down, std::uint32_t x, std::uint32_t y, std::uint32_t dark) {
    const bool safe = across.safe(x) && down.safe(y);
    losses.ink += dark;
    losses.safe_ink += safe ? dark : 0;
    const bool off_x[2] = {across.leaves_start(x), across.leaves_end(x)}, off_y[2] = {down.leaves_start(y), down.leaves_end(y)};
    if (!off_x[0] && !off_x[1] && !off_y[0] && !off_y[1]) return;
    const Length in_x[2] = {across.from_start(x), across.from_end(x)}, in_y[2] = {down.from_start(y), down.from_end(y)};
    for (int i = 0; i < 2; ++i)
        for (int j = 0; j < 2; ++j) {
            if (!off_x[i] && !off_y[j]) continue;
            Loss& loss = losses.corner[i][j];
            loss.ink += dark;
            loss.safe_ink += safe ? dark : 0;
            // Off over one edge it was as far in as that edge says; over both, as the nearer one.
            loss.deepest = max(loss.deepest, off_x[i] && off_y[j] ? min(in_x[i], in_y[j]) : off_x[i] ? in_x[i] : in_y[j]);
        }
}

Losses losses_of(const Pixels& page, const Axis& across, const Axis& down) {
    Losses losses;
    for (std::uint32_t y = 0; y < page.height; ++y)
        for (std::uint32_t x = 0; x < page.width; ++x)
            if (const std::uint32_t dark = darkness(&page.rgb[(std::size_t{y} * page.width + x) * 3]); dark >= ink_threshold)
                count(losses, across, down, x, y, dark);
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
    const Axis across(sheet.width, page.width, misprint, safe_area), down(sheet.height, page.height, misprint, safe_area);
    const Losses losses = losses_of(page, across, down);
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
