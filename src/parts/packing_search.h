// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/packing_no_fit.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace qw::parts::packing {

/// A copy: its quarter turns, and the lower left corner of its bounds on the area.
struct Copy {
    int turn = 0;
    Point at;
    friend bool operator==(const Copy&, const Copy&) = default;
};
using Copies = std::vector<Copy>;

/// What the search works on: an area, and one shape in its quarter turns. `turns` are those that
/// fit and look different from one another.
struct Task {
    Size area;
    Length gap;
    std::array<Size, 4> size;
    std::vector<int> turns;
    std::array<std::array<NoFit, 4>, 4> no_fit;  ///< [that stays][that is put beside it], for `turns`
    std::size_t target = 0;            ///< no more are asked for, or no more can lie there
};

/// Counts steps, not time, so that the same search ends at the same place everywhere.
struct Budget {
    std::int64_t steps = 0;
    bool spent() const { return steps <= 0; }
};

/// Copies put one by one where two edges meet of what bounds the place for one more: the area's sides and the copies that
/// lie there. Tries orders from the lower left; then all choices one after the other, as far as half of the budget goes; then
/// the orders again with steps out of turn. Returns `known` if nothing holds more.
Copies searched(const Task& task, const Copies& known, Budget budget);

}  // namespace qw::parts::packing
