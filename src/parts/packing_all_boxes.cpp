// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_all_boxes.h"

#include <algorithm>
#include <cmath>

namespace qw::parts::packing {

namespace {

class AllWays {
public:
    AllWays(Size area, Size box, std::size_t count, std::int64_t steps)
        : box_(box), count_(count), steps_(steps), x_(stations(area.width, box)), y_(stations(area.height, box)),
          across_(x_.size() - 1), up_(y_.size() - 1), decided_(across_ * up_) {
        spare_ = x_.back().in_mm() * y_.back().in_mm() - static_cast<double>(count) * box.width.in_mm() * box.height.in_mm();
    }

    std::optional<std::vector<Box>> run() {
        const bool found = spare_ > -rounding && more_from(0);
        if (!found && steps_ <= 0) return {};
        return boxes_;
    }

private:
    static constexpr double rounding = 1e-6;  // mm²

    static std::vector<Length> stations(Length most, Size box) {
        std::vector<Length> sums;
        for (Length a; a <= most; a += box.width)
            for (Length b = a; b <= most; b += box.height) sums.push_back(b);
        std::sort(sums.begin(), sums.end());
        sums.erase(std::unique(sums.begin(), sums.end()), sums.end());
        return sums;
    }

    /// Puts the box with its lower left corner in the cell, or takes it away again; false if it has no room.
    bool mark(std::size_t cell, Size box, char as) {
        const std::size_t left = cell % across_, bottom = cell / across_;
        const auto right = std::lower_bound(x_.begin(), x_.end(), x_[left] + box.width);
        const auto top = std::lower_bound(y_.begin(), y_.end(), y_[bottom] + box.height);
        if (right == x_.end() || top == y_.end()) return false;
        const auto end_x = static_cast<std::size_t>(right - x_.begin()), end_y = static_cast<std::size_t>(top - y_.begin());
        // A cell above this row is taken only together with one of this row: looking along the row suffices.
        for (std::size_t x = left; x < end_x && as; ++x)
            if (decided_[bottom * across_ + x]) return false;
        for (std::size_t y = bottom; y < end_y; ++y)
            for (std::size_t x = left; x < end_x; ++x) decided_[y * across_ + x] = as;
        return true;
    }

    bool more_from(std::size_t cell) {
        if (boxes_.size() == count_) return true;
        while (cell < decided_.size() && decided_[cell]) ++cell;
        if (cell == decided_.size() || --steps_ <= 0) return false;
        for (const bool turned : {false, true}) {
            if (turned && box_.width == box_.height) break;
            const Size box = turned ? box_.turned() : box_;
            if (!mark(cell, box, 1)) continue;
            boxes_.push_back({turned, {x_[cell % across_], y_[cell / across_]}});
            if (more_from(cell + 1)) return true;
            boxes_.pop_back();
            mark(cell, box, 0);
        }
        return leave_empty(cell);
    }

    bool leave_empty(std::size_t cell) {
        const std::size_t x = cell % across_, y = cell / across_;
        const double lost = (x_[x + 1] - x_[x]).in_mm() * (y_[y + 1] - y_[y]).in_mm();
        if (lost > spare_ + rounding) return false;
        spare_ -= lost;
        decided_[cell] = 1;
        const bool found = more_from(cell + 1);
        decided_[cell] = 0;
        spare_ += lost;
        return found;
    }

    Size box_;
    std::size_t count_;
    std::int64_t steps_;
    std::vector<Length> x_, y_;
    std::size_t across_, up_;
    std::vector<char> decided_;
    double spare_ = 0;
    std::vector<Box> boxes_;
};

}  // namespace

std::optional<std::vector<Box>> all_ways(Size area, Size box, std::size_t count, std::int64_t steps) {
    constexpr std::size_t most = 60;   // for more no number of steps suffices that somebody would wait for
    if (count > most || max(area.width, area.height) / min(box.width, box.height) > most) return {};
    return AllWays(area, box, count, steps).run();
}

}  // namespace qw::parts::packing
