// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/order.h"

#include <algorithm>

namespace qw::formulas {

namespace {

enum class State { unseen, open, done };

/// Depth first, with the path in a list of its own: a template may be long, the stack is not.
class Walk {
public:
    explicit Walk(const std::vector<std::vector<std::size_t>>& uses) : uses_(uses), state_(uses.size()), next_(uses.size()) {}

    void from(std::size_t start) {
        if (state_[start] != State::unseen) return;
        enter(start);
        while (!path_.empty()) step();
    }
    Order take() { return std::move(found_); }

private:
    void enter(std::size_t node) {
        state_[node] = State::open;
        path_.push_back(node);
    }
    void step() {
        const std::size_t node = path_.back();
        if (next_[node] == uses_[node].size()) {
            state_[node] = State::done;
            found_.order.push_back(node);
            path_.pop_back();
            return;
        }
        const std::size_t used = uses_[node][next_[node]++];
        if (state_[used] == State::unseen) enter(used);
        else if (state_[used] == State::open) tell_cycle(used);
    }
    void tell_cycle(std::size_t first) {
        std::vector<std::size_t> cycle(std::find(path_.begin(), path_.end(), first), path_.end());
        cycle.push_back(first);
        found_.cycles.push_back(std::move(cycle));
    }

    const std::vector<std::vector<std::size_t>>& uses_;
    std::vector<State> state_;
    std::vector<std::size_t> next_;
    std::vector<std::size_t> path_;
    Order found_;
};

}  // namespace

Order order_of(const std::vector<std::vector<std::size_t>>& uses) {
    Walk walk(uses);
    for (std::size_t i = 0; i < uses.size(); ++i) walk.from(i);
    return walk.take();
}

}  // namespace qw::formulas
