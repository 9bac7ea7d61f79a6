// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/folding.h"

#include "parts/bend.h"
#include "parts/edges.h"
#include "parts/fold_move.h"
#include "parts/folded_checks.h"
#include "parts/lying.h"
#include "parts/telling.h"

#include <algorithm>

namespace qw::parts {

namespace {

void add(Findings& all, const Findings& more) { all.insert(all.end(), more.begin(), more.end()); }

class Folding {
public:
    explicit Folding(const Net& net) : net_(net), edges_(shared_edges(net.panels)) {}

    Folded made() {
        states_.push_back(lying_flat(net_.panels));
        while (states_.size() <= net_.folds.size() && make_fold(states_.size() - 1)) {}
        for (const Lying& state : states_) folded_.states.push_back(state.poses);
        measure();
        if (states_.size() == net_.folds.size() + 1) {
            add(folded_.findings, check_tabs(net_, states_.back()));
            add(folded_.findings, check_layers(net_, states_.back()));
        }
        add(folded_.findings, check_faces(net_, states_));
        return folded_;
    }

private:
    void refuse(std::size_t fold, const std::vector<FoldRefusal>& refusals) {
        for (const FoldRefusal& why : refusals) folded_.findings.push_back(told_at(net_, fold_mark(net_, fold), why.rule, why.message, why.mend));
    }

    bool make_fold(std::size_t fold) {
        const FoundLine found = line_of(net_, edges_, states_.back(), fold);
        if (!found.line.hinges.empty()) add_scores(found.line, fold);
        if (!found.refusals.empty()) {
            refuse(fold, found.refusals);
            return false;
        }
        FoldMove move = moved_over(net_, states_.back(), found.line, fold);
        if (!move.refusals.empty()) {
            refuse(fold, move.refusals);
            return false;
        }
        add(folded_.findings, check_bend(net_, move.after, found.line, fold));
        states_.push_back(std::move(move.after));
        return true;
    }

    /// A line that is folded twice, there and back, is scored once.
    void add_scores(const FoldLine& line, std::size_t fold) {
        for (const Hinge& hinge : line.hinges) {
            const SharedEdge& edge = edges_[hinge.edge];
            const bool there = std::any_of(folded_.scores.begin(), folded_.scores.end(),
                                           [&](const ScoreLine& score) { return score.from == edge.from && score.to == edge.to; });
            if (there) continue;
            const bool seen_from_behind = states_.back().poses[hinge.stays].back_up;
            folded_.scores.push_back({edge.from, edge.to, net_.folds[fold].valley != seen_from_behind, fold, hinge.moves, hinge.stays});
        }
    }

    void measure() {
        const std::vector<Region>& placed = states_.back().placed;
        Region together;
        for (const Region& region : placed) together.insert(together.end(), region.begin(), region.end());
        folded_.size = bounds(together).size();
        folded_.most_layers = static_cast<int>(depths_of(placed).size());
        folded_.thickness = net_.conditions.caliper * folded_.most_layers;
    }

    const Net& net_;
    std::vector<SharedEdge> edges_;
    std::vector<Lying> states_;
    Folded folded_;
};

}  // namespace

Folded fold(const Net& net) { return Folding(net).made(); }

}  // namespace qw::parts
