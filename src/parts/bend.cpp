// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/bend.h"

#include "parts/outline.h"
#include "parts/telling.h"

#include <algorithm>
#include <numbers>
#include <optional>

namespace qw::parts {

namespace {

/// Something that ends too near to a fold.
struct ShortEnd {
    std::size_t panel = 0;
    const Hinge* hinge = nullptr;
    int layers = 0;
    Length gap, need;
};

/// The longest run of a region along a line.
Length run_along(const Region& region, Vec along) {
    Length longest;
    for (const Ring& ring : region) {
        double least = 0, most = 0;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const double at = dot(Vec::of(ring[i]), along);
            least = i ? std::min(least, at) : at;
            most = i ? std::max(most, at) : at;
        }
        longest = max(longest, Length::mm(most - least));
    }
    return longest;
}

class ClosedEdge {
public:
    ClosedEdge(const Net& net, const Lying& after, const FoldLine& line, const Hinge& hinge)
        : net_(net), after_(after), line_(line), hinge_(hinge), from_(hinge.from), to_(hinge.to) {
        if (dot(to_ - from_, line.along) < 0) std::swap(from_, to_);
    }

    std::optional<ShortEnd> worst() {
        find_enclosed();
        if (enclosed_.empty()) return std::nullopt;
        const Region strip = strip_to(taken_by_bend(static_cast<int>(enclosed_.size()), net_.conditions.caliper));
        std::vector<Region> inside;
        for (const std::size_t panel : enclosed_) inside.push_back(shared(after_.placed[panel], strip));
        const std::vector<Region> depths = depths_of(inside);
        for (std::size_t i = 0; i < enclosed_.size(); ++i)
            for (std::size_t d = 0; d < depths.size() && !bent_here(enclosed_[i]); ++d)
                look_at(enclosed_[i], shared(inside[i], depths[d]), static_cast<int>(d) + 1);
        return worst_;
    }

private:
    void find_enclosed() {
        const int up = after_.order[hinge_.moves][hinge_.stays];
        for (std::size_t i = 0; i < net_.panels.size(); ++i)
            if (up != 0 && after_.order[hinge_.moves][i] == up && after_.order[i][hinge_.stays] == up) enclosed_.push_back(i);
    }

    /// The fold bends it too: its paper goes on.
    bool bent_here(std::size_t panel) const {
        return std::any_of(line_.hinges.begin(), line_.hinges.end(), [&](const Hinge& h) { return h.moves == panel || h.stays == panel; });
    }

    /// What moved came from the left of the line: it and what it closes on lie on its right.
    Region strip_to(Length deep) const { return strip_beside(from_, to_, -deep.in_mm()); }

    Length run_to(const Region& region, Length deep) const { return run_along(shared(region, strip_to(deep)), line_.along); }

    void look_at(std::size_t panel, const Region& region, int layers) {
        const Length need = taken_by_bend(layers, net_.conditions.caliper);
        if (!is_area(shared(region, strip_to(need))) || run_to(region, need) <= corner_that_gives_way) return;
        Length near, far = need;       // halving: 20 times is finer than the lengths
        for (int i = 0; i < 20; ++i) {
            const Length middle = (near + far) / 2;
            (run_to(region, middle) > corner_that_gives_way ? far : near) = middle;
        }
        const Length gap = far < same_point ? Length() : far;
        if (!worst_ || need - gap > worst_->need - worst_->gap + same_point) worst_ = ShortEnd{panel, &hinge_, layers, gap, need};
    }

    const Net& net_;
    const Lying& after_;
    const FoldLine& line_;
    const Hinge& hinge_;
    Vec from_, to_;
    std::vector<std::size_t> enclosed_;
    std::optional<ShortEnd> worst_;
};

Finding told_of(const Net& net, const ShortEnd& end, std::size_t fold) {
    const UnitSystem system = apart_in(net.conditions.system, end.gap, end.need);
    const std::string panel = title_of(net, end.panel), line = title_of(net, end.hinge->moves) + " and " + title_of(net, end.hinge->stays);
    const std::string layers = end.layers == 1 ? "one layer" : std::to_string(end.layers) + " layers";
    Finding finding = told_at(net, fold_mark(net, fold), "part-inner-panel",
                              panel + " ends " + told(end.gap, system) + " before the fold between " + line + "; going round " + layers + " of " +
                                  show_metric(net.conditions.caliper) + ", the fold takes " + told_missing(end.need, system),
                              "make " + panel + " end at least " + told_missing(end.need - end.gap, system) + " earlier, or take thinner paper");
    finding.measured = told(end.gap, system);
    finding.limit = told_missing(end.need, system);
    return finding;
}

}  // namespace

Length taken_by_bend(int layers, Length caliper) { return caliper * (std::numbers::pi / 4 * (layers + 1)); }

Findings check_bend(const Net& net, const Lying& after, const FoldLine& line, std::size_t fold) {
    std::optional<ShortEnd> worst;
    for (const Hinge& hinge : line.hinges) {
        const auto end = ClosedEdge(net, after, line, hinge).worst();
        if (end && (!worst || end->need - end->gap > worst->need - worst->gap + same_point)) worst = end;
    }
    if (!worst) return {};
    return {told_of(net, *worst, fold)};
}

}  // namespace qw::parts
