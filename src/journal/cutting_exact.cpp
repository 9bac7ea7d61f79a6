// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_exact.h"

#include <algorithm>

namespace qw::journal::cutting {

namespace {

/// One board's worth of pieces.
struct Fill {
    std::size_t selection = 0, held = 0;
    Fronts::Fit fit;
};

/// A plan of a selection: its last board's fill, and which plan of the rest it goes on from.
struct Plan {
    int boards = 0;
    double area = 0, remainder = 0;
    std::vector<int> scarce;           ///< boards used of each kind that is short
    Fill last;
    std::size_t before = 0;

    bool better_than(const Plan& other) const {
        if (boards != other.boards) return boards < other.boards;
        if (area != other.area) return area < other.area;
        return remainder > other.remainder;
    }
};

class ExactPlans {
public:
    ExactPlans(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply)
        : sorts_(sorts), boards_(boards), supply_(supply), fronts_(sorts, boards), fills_(fronts_.selections().count()), plans_(fills_.size()) {
        int pieces = 0;
        for (const Sort& sort : sorts_) pieces += static_cast<int>(sort.pieces.size());
        for (std::size_t i = 0; i < supply_.size(); ++i)
            if (supply_[i].most && *supply_[i].most < pieces) scarce_.push_back(i);
    }

    std::vector<Layout> best() {
        for (std::size_t selection = 1; selection < fills_.size(); ++selection) fills_[selection] = fills_of(selection);
        plans_[0].push_back({0, 0, 0, std::vector<int>(scarce_.size()), {}, 0});
        for (std::size_t selection = 1; selection < plans_.size(); ++selection) plan(selection);
        return layouts(largest_planned());
    }

private:
    std::vector<Fill> fills_of(std::size_t selection) const {
        std::vector<Fill> fills;
        for (std::size_t held = 0; held < boards_.size(); ++held)
            if (const auto fit = fronts_.fit(selection, boards_[held])) fills.push_back({selection, held, *fit});
        return fills;
    }

    /// The board that is planned last takes a piece of the last sort, whichever: so no plan is met in two orders.
    void plan(std::size_t selection) {
        std::size_t sort = sorts_.size() - 1;
        while (fronts_.selections().how_many(selection, sort) == 0) --sort;
        fronts_.selections().parts_of(selection, [&](std::size_t part) {
            if (part == 0 || fronts_.selections().how_many(part, sort) == 0) return;
            for (const Fill& fill : fills_[part])
                for (std::size_t before = 0; before < plans_[selection - part].size(); ++before) offer(selection, fill, before);
        });
    }

    void offer(std::size_t selection, const Fill& fill, std::size_t before) {
        Plan plan = plans_[selection - fill.selection][before];
        for (std::size_t i = 0; i < scarce_.size(); ++i)
            if (scarce_[i] == boards_[fill.held].board && ++plan.scarce[i] > *supply_[scarce_[i]].most) return;
        plan.boards += 1;
        plan.area += boards_[fill.held].area();
        plan.remainder = std::max(plan.remainder, fill.fit.remainder);
        plan.last = fill;
        plan.before = before;
        keep(plans_[selection], std::move(plan));
    }

    /// One plan makes another needless when it is no worse and takes no more of what is short.
    static bool needless(const Plan& plan, const Plan& beside) {
        return !plan.better_than(beside) && std::equal(beside.scarce.begin(), beside.scarce.end(), plan.scarce.begin(), std::less_equal<>());
    }

    static void keep(std::vector<Plan>& plans, Plan plan) {
        for (const Plan& other : plans)
            if (needless(plan, other)) return;
        // Their numbers are not referred to before this selection is done.
        plans.erase(std::remove_if(plans.begin(), plans.end(), [&](const Plan& other) { return needless(other, plan); }), plans.end());
        plans.push_back(std::move(plan));
    }

    double area(std::size_t selection) const {
        double sum = 0;
        for (std::size_t s = 0; s < sorts_.size(); ++s) sum += static_cast<double>(fronts_.selections().how_many(selection, s)) * sorts_[s].area();
        return sum;
    }

    /// Everything, unless boards run out.
    std::size_t largest_planned() const {
        std::size_t best = 0;
        for (std::size_t selection = 1; selection < plans_.size(); ++selection) {
            if (plans_[selection].empty()) continue;
            const double mine = area(selection), held = area(best);
            if (mine > held || (mine == held && best_of(selection).better_than(best_of(best)))) best = selection;
        }
        return best;
    }

    const Plan& best_of(std::size_t selection) const {
        return *std::min_element(plans_[selection].begin(), plans_[selection].end(), [](const Plan& a, const Plan& b) { return a.better_than(b); });
    }

    std::vector<Layout> layouts(std::size_t selection) const {
        std::vector<Layout> made;
        if (selection == 0) return made;
        for (const Plan* plan = &best_of(selection);; plan = &plans_[selection][plan->before]) {
            if (plan->boards == 0) return made;
            made.push_back(fronts_.laid_out(plan->last.selection, plan->last.fit.way, boards_[plan->last.held]));
            selection -= plan->last.selection;
        }
    }

    const std::vector<Sort>& sorts_;
    const std::vector<HeldBoard>& boards_;
    const std::vector<BoardSupply>& supply_;
    Fronts fronts_;
    std::vector<std::vector<Fill>> fills_;   ///< by selection
    std::vector<std::vector<Plan>> plans_;   ///< by selection
    std::vector<std::size_t> scarce_;        ///< supplies that may run out
};

}  // namespace

std::vector<Layout> exact_layouts(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards, const std::vector<BoardSupply>& supply) {
    return ExactPlans(sorts, boards, supply).best();
}

}  // namespace qw::journal::cutting
