// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/folded_checks.h"

#include "parts/outline.h"
#include "parts/pocket_space.h"
#include "parts/telling.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::parts {

namespace {

std::string percent_of(double part, double whole) {
    char text[32];
    std::snprintf(text, sizeof text, "%.0f %%", std::max(1.0, 100 * part / whole));
    return text;
}

/// A panel that lies between two that should touch, over some of where they overlap.
std::optional<std::size_t> panel_between(const Lying& closed, std::size_t a, std::size_t b) {
    const Region both = shared(closed.placed[a], closed.placed[b]);
    for (std::size_t i = 0; i < closed.placed.size(); ++i)
        if (closed.order[a][i] * closed.order[i][b] > 0 && closed.order[a][i] == closed.order[a][b] && is_area(shared(closed.placed[i], both))) return i;
    return std::nullopt;
}

Finding tab_finding(const Net& net, std::size_t glue, const std::string& message, const std::string& mend) {
    return told_at(net, glue_mark(net, glue), "part-tab-uncovered", message, mend);
}

void check_tab(const Net& net, const Lying& closed, std::size_t index, Findings& findings) {
    const Glue& glue = net.glue[index];
    const std::string tab = title_of(net, glue.tab), on = title_of(net, glue.on);
    if (closed.order[glue.tab][glue.on] == 0) {
        findings.push_back(tab_finding(net, index, "Folded, " + tab + " does not lie on " + on + ", which it is glued to",
                                       "look at the folds of both and which way they go"));
        return;
    }
    if (const auto between = panel_between(closed, glue.tab, glue.on))
        findings.push_back(tab_finding(net, index, "Folded, " + title_of(net, *between) + " lies between " + tab + " and " + on + ", which are glued together",
                                       "fold " + tab + " before " + title_of(net, *between) + " covers " + on + ", or the other way"));
    const Region out = without(closed.placed[glue.tab], closed.placed[glue.on]);
    if (!is_area(out)) return;
    const Rect box = bounds(out);
    const UnitSystem system = net.conditions.system;
    Finding finding = tab_finding(net, index,
                                  "Folded, " + tab + " stands out beyond " + on + ", which it is glued to, over an area of " +
                                      told(box.width(), system) + " by " + told(box.height(), system),
                                  "make " + tab + " smaller or slant it, so that " + on + " covers it");
    finding.measured = told(box.width(), system) + " by " + told(box.height(), system);
    finding.limit = told(Length(), system);
    findings.push_back(finding);
}

/// Where a face's head points, in a state, for who looks from there: 0 up, 1 left, 2 down, 3 right.
int head_seen(const Face& face, const Pose& pose) {
    constexpr int towards[4][2] = {{0, 1}, {-1, 0}, {0, -1}, {1, 0}};
    const int x = towards[face.head][0] * (face.side == Side::back ? -1 : 1), y = towards[face.head][1];
    double seen_x = pose.place.a * x + pose.place.c * y;
    const double seen_y = pose.place.b * x + pose.place.d * y;
    if (!face.from_front) seen_x = -seen_x;
    if (std::abs(seen_y) >= std::abs(seen_x)) return seen_y > 0 ? 0 : 2;
    return seen_x < 0 ? 1 : 3;
}

std::string when(const Face& face, const Net& net) {
    const std::string from = face.from_front ? "from the front" : "from behind";
    if (face.after == 0) return "flat and seen " + from;
    if (face.after == net.folds.size()) return "all folded and seen " + from;
    return "after fold " + std::to_string(face.after) + ", seen " + from + ",";
}

class FaceLook {
public:
    FaceLook(const Net& net, const Lying& state, std::size_t index) : net_(net), state_(state), index_(index), face_(net.faces[index]) {}

    Findings findings() {
        for (const std::size_t panel : face_.panels) look(panel);
        say_turned();
        say_hidden();
        return findings_;
    }

private:
    void look(std::size_t panel) {
        const Pose& pose = state_.poses[panel];
        const bool looks_front = pose.back_up == (face_.side == Side::back);
        if (looks_front != face_.from_front) {
            away_.push_back(panel);
            return;
        }
        const int head = head_seen(face_, pose);
        if (head != 0) turned_[head].push_back(panel);
        look_for_covers(panel);
    }

    void look_for_covers(std::size_t panel) {
        Region open = state_.placed[panel];
        for (const Pocket& pocket : net_.pockets)  // a pocket's front is meant to cover its back, and so is what lies in it
            for (std::size_t i = 0; pocket.back == panel && i < state_.placed.size(); ++i)
                if (over(i, panel) && part_of_pocket(state_, i, pocket)) open = without(open, state_.placed[i]);
        for (std::size_t i = 0; i < state_.placed.size(); ++i) {
            if (!over(i, panel)) continue;
            const Region covered = shared(open, state_.placed[i]);
            if (!is_area(covered)) continue;
            covers_.push_back(i);
            covered_ += area_mm2(covered);
            open = without(open, covered);
        }
    }

    bool over(std::size_t i, std::size_t panel) const { return state_.order[i][panel] == (face_.from_front ? 1 : -1); }

    std::string on(const std::vector<std::size_t>& panels) const {
        return panels.size() == face_.panels.size() ? "" : " on " + titles_of(net_, panels);
    }

    void say(std::string rule, std::string message, std::string mend, std::string measured, std::string limit) {
        Finding finding = told_at(net_, face_mark(net_, index_), std::move(rule), std::move(message), std::move(mend));
        finding.measured = std::move(measured);
        finding.limit = std::move(limit);
        findings_.push_back(finding);
    }

    void say_turned() {
        constexpr const char* lies[4] = {"upright", "turned a quarter to the left", "upside down", "turned a quarter to the right"};
        constexpr const char* heads[4] = {"up", "left", "down", "right"};
        for (int head = 1; head < 4; ++head) {
            if (turned_[head].empty()) continue;
            say("part-face-turned",
                "The face '" + face_.title + "' is " + lies[head] + on(turned_[head]) + " when the part is " + when(face_, net_) + " and looked at",
                "write 'head: " + std::string(heads[right_head(turned_[head].front())]) + "' for it, and draw its artwork that way", lies[head],
                lies[0]);
        }
    }

    /// The head with which it would be upright.
    int right_head(std::size_t panel) const {
        Face other = face_;
        for (other.head = 0; other.head < 3 && head_seen(other, state_.poses[panel]) != 0;) ++other.head;
        return other.head;
    }

    void say_hidden() {
        const std::string title = "The face '" + face_.title + "'";
        if (!away_.empty())
            say("part-face-hidden", title + " looks the other way" + on(away_) + " when the part is " + when(face_, net_) + " and looked at",
                "put it on the other side of the sheet, or say that it is seen from the other side", "the other side", face_.from_front ? "the front" : "behind");
        if (covers_.empty()) return;
        std::sort(covers_.begin(), covers_.end());
        covers_.erase(std::unique(covers_.begin(), covers_.end()), covers_.end());
        double whole = 0;
        for (const std::size_t panel : face_.panels) whole += area_mm2(net_.panels[panel].region);
        say("part-face-hidden",
            titles_of(net_, covers_) + (covers_.size() == 1 ? " covers " : " cover ") + percent_of(covered_, whole) + " of the face '" + face_.title +
                "' when the part is " + when(face_, net_) + " and looked at",
            "say after which fold it is looked at, or look at the order of the folds", percent_of(covered_, whole), "0 %");
    }

    const Net& net_;
    const Lying& state_;
    std::size_t index_;
    const Face& face_;
    std::vector<std::size_t> away_, covers_;
    std::vector<std::size_t> turned_[4];
    double covered_ = 0;
    Findings findings_;
};

}  // namespace

Findings check_tabs(const Net& net, const Lying& closed) {
    Findings findings;
    for (std::size_t i = 0; i < net.glue.size(); ++i) check_tab(net, closed, i, findings);
    return findings;
}

Findings check_layers(const Net& net, const Lying& closed) {
    Findings findings;
    std::vector<std::size_t> lying = net.layers;
    std::stable_sort(lying.begin(), lying.end(), [&](std::size_t a, std::size_t b) { return closed.poses[a].level > closed.poses[b].level; });
    for (std::size_t i = 0; i < net.layers.size() && findings.empty(); ++i)
        for (std::size_t j = i + 1; j < net.layers.size() && findings.empty(); ++j) {
            if (closed.order[net.layers[i]][net.layers[j]] >= 0) continue;
            Finding finding = told_at(net, part_mark(net), "part-layers",
                                      "Folded, " + title_of(net, net.layers[i]) + " lies under " + title_of(net, net.layers[j]) + ", and should lie on it",
                                      "change the order of the folds, or which way they go; the layers are now, from the front: " + titles_of(net, lying));
            finding.measured = titles_of(net, lying);
            finding.limit = titles_of(net, net.layers);
            findings.push_back(finding);
        }
    return findings;
}

Findings check_faces(const Net& net, const std::vector<Lying>& states) {
    Findings findings;
    for (std::size_t i = 0; i < net.faces.size(); ++i) {
        if (net.faces[i].after >= states.size()) continue;
        const Findings more = FaceLook(net, states[net.faces[i].after], i).findings();
        findings.insert(findings.end(), more.begin(), more.end());
    }
    return findings;
}

}  // namespace qw::parts
