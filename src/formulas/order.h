// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

namespace qw::formulas {

/// An order in which everything comes after what it uses; cycles, each told once, from a member back to the same
/// member. Members of cycles and what uses them are in `order` nevertheless, so that every fault can be looked for.
struct Order {
    std::vector<std::size_t> order;
    std::vector<std::vector<std::size_t>> cycles;
};

/// `uses[i]` holds the numbers of those that i uses. The order is the given one as far as possible.
Order order_of(const std::vector<std::vector<std::size_t>>& uses);

}  // namespace qw::formulas
