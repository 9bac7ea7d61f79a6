// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fold_move.h"

#include "parts/outline.h"
#include "parts/telling.h"

#include <algorithm>

namespace qw::parts {

namespace {

constexpr double beyond_any_part_mm = 5000;

Matrix half_turn_about(const FoldLine& line) {
    const Vec u = line.along;
    const double a = u.x * u.x - u.y * u.y, b = 2 * u.x * u.y, in_points = Length::mm(1).in_points();
    const Vec q = line.through;        // stays where it is
    const Vec e{q.x - (a * q.x + b * q.y), q.y - (b * q.x - a * q.y)};
    return {a, b, b, -a, e.x * in_points, e.y * in_points};
}

/// One fold's look at all pairs of a panel that moves and one that stays.
class Turning {
public:
    Turning(const Net& net, const Lying& before, const FoldLine& line, std::size_t fold)
        : net_(net), before_(before), line_(line), fold_(net.folds[fold]), moves_(net.panels.size()), toward_(fold_.valley ? 1 : -1) {
        for (const std::size_t panel : fold_.moves) moves_[panel] = true;
        const Vec from = line.through - line.along * beyond_any_part_mm, to = line.through + line.along * beyond_any_part_mm;
        left_ = strip_beside(from, to, beyond_any_part_mm);
        right_ = strip_beside(from, to, -beyond_any_part_mm);
    }

    FoldMove made() {
        each_pair([&](std::size_t m, std::size_t s) { look_at_way(m, s); });
        if (!move_.refusals.empty()) return move_;
        turn();
        each_pair([&](std::size_t m, std::size_t s) { settle(m, s); });
        if (move_.refusals.empty()) level();
        return move_;
    }

private:
    template <typename Look>
    void each_pair(const Look& look) {
        for (std::size_t m = 0; m < moves_.size(); ++m)
            for (std::size_t s = 0; s < moves_.size(); ++s)
                if (moves_[m] && !moves_[s]) look(m, s);
    }

    void look_at_way(std::size_t m, std::size_t s) {
        const int order = before_.order[m][s] * toward_;
        if (order == 0) return;
        // On the left, what stays above bars the way of what moves up; on the right, what moves above has to go down.
        if (is_area(shared(shared(before_.placed[m], before_.placed[s]), order < 0 ? left_ : right_))) refuse(m, s);
    }

    void refuse(std::size_t m, std::size_t s) {
        const bool across = is_area(shared(before_.placed[s], left_)) && is_area(shared(before_.placed[s], right_));
        const std::string moving = title_of(net_, m), staying = title_of(net_, s);
        if (across)
            move_.refusals.push_back({"part-passes-through", staying + " lies across the line on which " + moving + " is folded, and the fold would close round it",
                                      "fold " + staying + " later, or end it before the line"});
        else
            move_.refusals.push_back(
                {"part-passes-through",
                 moving + " would go through " + staying + " on its way " + (fold_.valley ? "over to the front" : "round to the back"),
                 "fold " + moving + " before " + staying + " comes to lie there, or fold it the other way"});
    }

    void turn() {
        move_.after = before_;
        const Matrix turned = half_turn_about(line_);
        for (std::size_t i = 0; i < moves_.size(); ++i) {
            if (!moves_[i]) continue;
            Pose& pose = move_.after.poses[i];
            pose.place = turned.after(pose.place);
            pose.back_up = !pose.back_up;
            move_.after.placed[i] = mapped(net_.panels[i].region, pose.place);
            for (std::size_t j = 0; j < moves_.size(); ++j)
                if (moves_[j]) move_.after.order[i][j] = -before_.order[i][j];
        }
    }

    void settle(std::size_t m, std::size_t s) {
        const Region both = shared(move_.after.placed[m], move_.after.placed[s]);
        const bool on_right = is_area(shared(both, right_)), on_left = is_area(shared(both, left_));
        if (on_right && on_left) refuse(m, s);
        const int order = on_right ? toward_ : on_left ? -toward_ : 0;
        move_.after.order[m][s] = order;
        move_.after.order[s][m] = -order;
    }

    void level() {
        const auto levels = levels_of(move_.after.order);
        if (!levels) {
            move_.refusals.push_back({"part-passes-through", "After the fold of " + titles_of(net_, fold_.moves) + " panels would lie over each other in a ring",
                                      "make the folds one after the other round the part"});
            return;
        }
        for (std::size_t i = 0; i < moves_.size(); ++i) move_.after.poses[i].level = (*levels)[i];
    }

    const Net& net_;
    const Lying& before_;
    const FoldLine& line_;
    const Fold& fold_;
    std::vector<bool> moves_;
    int toward_;                       ///< 1: what is higher is nearer to where the fold goes; -1: what is lower
    Region left_, right_;
    FoldMove move_;
};

}  // namespace

FoldMove moved_over(const Net& net, const Lying& before, const FoldLine& line, std::size_t fold) { return Turning(net, before, line, fold).made(); }

}  // namespace qw::parts
