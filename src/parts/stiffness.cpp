// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/stiffness.h"

#include "parts/edges.h"
#include "parts/outline.h"
#include "parts/plane.h"

#include <algorithm>
#include <cmath>

namespace qw::parts {

namespace {

constexpr double per_unit_mm = 100;    // so that slopes and heights are numbers of one size
constexpr double nothing = 1e-3;        // 0.1 mm at that distance: lines that miss each other by less are one line

using Row = std::vector<double>;

/// Three unknowns a panel: slope in x, slope in y, height at the origin.
class Lifting {
public:
    explicit Lifting(std::size_t panels) : panels_(panels) {}

    void same_height(std::size_t a, std::size_t b, Vec at) {
        Row row(panels_ * 3);
        const double terms[3] = {at.x / per_unit_mm, at.y / per_unit_mm, 1};
        for (std::size_t k = 0; k < 3; ++k) row[a * 3 + k] = terms[k], row[b * 3 + k] = -terms[k];
        rows_.push_back(row);
    }
    void same(std::size_t a, std::size_t b) {
        for (std::size_t k = 0; k < 3; ++k) {
            Row row(panels_ * 3);
            row[a * 3 + k] = 1, row[b * 3 + k] = -1;
            rows_.push_back(row);
        }
    }

    /// A basis of all liftings: Gauss and Jordan with the largest pivot of each column.
    std::vector<Row> free_ones() {
        std::vector<std::size_t> pivots;
        std::vector<Row> basis;
        std::vector<std::size_t> left;
        for (std::size_t column = 0; column < panels_ * 3; ++column) (eliminate(column, pivots.size()) ? pivots : left).push_back(column);
        for (const std::size_t column : left) {
            Row lifting(panels_ * 3);
            lifting[column] = 1;
            for (std::size_t r = 0; r < pivots.size(); ++r) lifting[pivots[r]] = -rows_[r][column];
            basis.push_back(lifting);
        }
        return basis;
    }

private:
    bool eliminate(std::size_t column, std::size_t row) {
        if (row >= rows_.size()) return false;
        const auto best = std::max_element(rows_.begin() + static_cast<std::ptrdiff_t>(row), rows_.end(),
                                           [&](const Row& a, const Row& b) { return std::abs(a[column]) < std::abs(b[column]); });
        if (std::abs((*best)[column]) < nothing) return false;
        std::swap(rows_[row], *best);
        const double pivot = rows_[row][column];
        for (double& value : rows_[row]) value /= pivot;
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            const double factor = rows_[r][column];
            if (r == row || factor == 0) continue;
            for (std::size_t c = 0; c < rows_[r].size(); ++c) rows_[r][c] -= factor * rows_[row][c];
        }
        return true;
    }

    std::size_t panels_;
    std::vector<Row> rows_;
};

bool folded_along(const SharedEdge& edge, const Folded& folded) {
    return std::any_of(folded.scores.begin(), folded.scores.end(), [&](const ScoreLine& score) { return score.from == edge.from && score.to == edge.to; });
}

bool lifted_alike(const std::vector<Row>& liftings, std::size_t a, std::size_t b) {
    for (const Row& lifting : liftings)
        for (std::size_t k = 0; k < 3; ++k)
            if (std::abs(lifting[a * 3 + k] - lifting[b * 3 + k]) > 10 * nothing) return false;
    return true;
}

}  // namespace

std::vector<std::size_t> held_together(const Net& net, const Folded& folded, const Lying& closed) {
    const std::size_t count = net.panels.size();
    Lifting lifting(count);
    for (const SharedEdge& edge : shared_edges(net.panels)) {
        if (distance(edge.from, edge.to) < least_width.in_mm()) continue;
        if (!folded_along(edge, folded)) {
            lifting.same(edge.a, edge.b);
            continue;
        }
        for (const Point& end : {edge.from, edge.to}) lifting.same_height(edge.a, edge.b, Vec::of(mapped(end, closed.poses[edge.a].place)));
    }
    for (const Glue& glue : net.glue)
        if (closed.order[glue.tab][glue.on] != 0) lifting.same(glue.tab, glue.on);
    const std::vector<Row> liftings = lifting.free_ones();
    std::vector<std::size_t> held(count);
    for (std::size_t i = 0; i < count; ++i) {
        held[i] = i;
        for (std::size_t j = 0; j < i && held[i] == i; ++j)
            if (lifted_alike(liftings, i, j)) held[i] = held[j];
    }
    return held;
}

}  // namespace qw::parts
