// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/clear_space.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// Some of the line is in the inner part of the box: it stays between the lower and the upper edge for a part of its way
/// in which it is between the left and the right edge, too.
bool line_meets(const ClearSpace::Line& line, const Rect& box) {
    const auto& [a, b] = line;
    double enter = 0, leave = 1;
    const auto between = [&](Length from, Length to, Length low, Length high) {
        if (from == to) return from > low && from < high;
        const double first = (low - from) / (to - from), second = (high - from) / (to - from);
        enter = std::max(enter, std::min(first, second));
        leave = std::min(leave, std::max(first, second));
        return enter < leave;
    };
    return between(a.x, b.x, box.left, box.right) && between(a.y, b.y, box.bottom, box.top);
}

}  // namespace

bool ClearSpace::holds(const Rect& box, const Line* except) const {
    return std::none_of(words_.begin(), words_.end(), [&](const Rect& r) { return !r.shared_with(box).empty(); }) &&
           std::none_of(lines_.begin(), lines_.end(), [&](const Line& line) { return !(except && line == *except) && line_meets(line, box); });
}

bool ClearSpace::holds(const Line& line) const {
    return std::none_of(words_.begin(), words_.end(), [&](const Rect& r) { return line_meets(line, r); });
}

}  // namespace qw::compose
