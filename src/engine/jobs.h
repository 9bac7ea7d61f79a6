// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>

namespace qw::engine {

/// How many things may be done at once; handed in, so that a test can run one job and compare.
class Jobs {
public:
    explicit Jobs(unsigned count);
    unsigned count() const { return count_; }
    /// Calls `work(i)` for 0 ≤ i < n, at most count() at a time, and returns when all have ended. The first exception
    /// by index, not by time, is thrown again, so that what is told does not depend on the number of jobs; work that
    /// had not begun by then is not begun.
    void for_each(std::size_t n, const std::function<void(std::size_t)>& work) const;

private:
    unsigned count_;
};

}  // namespace qw::engine
