// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/fit.h"

#include "parts/outline.h"
#include "parts/pocket_space.h"
#include "parts/telling.h"

#include <algorithm>
#include <cmath>

namespace qw::parts {

namespace {

constexpr int least_per_cent = 30, most_per_cent = 103;

std::string in_per_cent(int value) { return std::to_string(value) + " %"; }

/// One thing and one pocket, at the scales they are printed at or at others.
class GoingIn {
public:
    GoingIn(const Net& net, const Folded& folded, const Pocket& pocket, const Contents& contents, const kit::PartRules& rules)
        : net_(net), pocket_(pocket), contents_(contents), rules_(rules), space_(net, folded, pocket), room_(space_.room()) {}

    Findings findings() const {
        const double scale = net_.conditions.scale;
        const Length clearance = clearance_at(scale);
        const Length across = contents_.size.width + clearance;
        if (room_.width + same_point < across) return {told_of("wide", contents_.size.width, clearance, room_.width)};
        if (!pocket_.closes) return {};
        const Length deep = contents_.size.height + clearance, depth = space_.height_within_back(across - same_point * 2);
        if (depth + same_point < deep) return {told_of("high", contents_.size.height, clearance, depth)};
        return {};
    }

private:
    Length clearance_at(double scale) const { return contents_.printed ? max(rules_.least_clearance, rules_.clearance * scale) : rules_.clearance; }

    /// At another print scale, told in the lengths of this one.
    bool holds_at(double scale) const {
        const double as_here = net_.conditions.scale / scale;
        const double grows = contents_.printed ? scale / contents_.scale : 1;
        const Length clearance = clearance_at(scale);
        const Length across = (contents_.size.width * grows + clearance) * as_here - same_point;
        if (room_.width < across) return false;
        return !pocket_.closes || space_.height_within_back(across - same_point) + same_point >= (contents_.size.height * grows + clearance) * as_here;
    }

    /// From the largest scale down: what holds at one holds at all that are larger.
    std::optional<int> from_per_cent() const {
        std::optional<int> from;
        for (int value = most_per_cent; value >= least_per_cent && holds_at(value / 100.0); --value) from = value;
        return from;
    }

    Finding told_of(const std::string& how, Length size, Length clearance, Length room) const {
        const UnitSystem system = apart_in(net_.conditions.system, room, size + clearance);
        const std::string thing = "'" + contents_.title + "'", pocket = "the pocket '" + pocket_.title + "'";
        Finding finding = told_at(net_, pocket_mark(net_, pocket_), "part-goes-in", message(thing, pocket, how, size, clearance, room), mend(thing, pocket));
        finding.measured = told(room, system);
        finding.limit = told(size + clearance, system);
        return finding;
    }

    std::string message(const std::string& thing, const std::string& pocket, const std::string& how, Length size, Length clearance, Length room) const {
        const UnitSystem system = apart_in(net_.conditions.system, room, size + clearance);
        const std::string what = thing + " is " + told(size, system) + " " + how + " and needs " + told(clearance, system) + " beside it; ";
        if (room == Length()) return what + pocket + " has no room";
        return what + pocket + " has " + told(room, system) + ", " + told_missing(size + clearance - room, system) + " too little";
    }

    std::string mend(const std::string& thing, const std::string& pocket) const {
        const auto from = from_per_cent();
        if (!from)
            return "make " + pocket + " larger or " + thing + " smaller: it goes in at no print scale from " + in_per_cent(least_per_cent) + " to " +
                   in_per_cent(most_per_cent);
        if (contents_.printed) return "print both at " + in_per_cent(*from) + " or more, or make " + pocket + " larger";
        return "print " + pocket + " at " + in_per_cent(*from) + " or more, or make it larger";
    }

    const Net& net_;
    const Pocket& pocket_;
    const Contents& contents_;
    const kit::PartRules& rules_;
    PocketSpace space_;
    PocketRoom room_;
};

Finding goes_on_finding(const Net& net, Size part, const std::string& on_title, Size on, bool on_shrinks_too) {
    const UnitSystem system = net.conditions.system;
    const auto shown = [&](Size size) {
        const std::string metric = show(size.width, size.height, UnitSystem::metric);
        return system == UnitSystem::metric ? metric : show(size.width, size.height, system) + " (" + metric + ")";
    };
    const double fits = net.conditions.scale * std::min(on.width / part.width, on.height / part.height);
    const int per_cent = static_cast<int>(std::floor(fits * 100 + 1e-6));
    const std::string title = net.part && !net.part->title.empty() ? "'" + net.part->title + "'" : "The part";
    std::string mend = "make it smaller";
    if (!on_shrinks_too && per_cent >= least_per_cent) mend = "print it at " + in_per_cent(std::min(per_cent, most_per_cent)) + " or less, or make it smaller";
    Finding finding = told_at(net, part_mark(net), "part-goes-on",
                              title + " is " + shown(part) + " when it is folded, and does not lie on '" + on_title + "' of " + shown(on), mend);
    finding.measured = shown(part);
    finding.limit = shown(on);
    return finding;
}

}  // namespace

Findings check_goes_in(const Net& net, const Folded& folded, const Pocket& pocket, const Contents& contents, const kit::PartRules& rules) {
    return GoingIn(net, folded, pocket, contents, rules).findings();
}

Findings check_goes_in(const Net& net, const Folded& folded, const Contents& contents, const kit::PartRules& rules) {
    Findings findings;
    for (const Pocket& pocket : net.pockets) {
        const Findings more = check_goes_in(net, folded, pocket, contents, rules);
        findings.insert(findings.end(), more.begin(), more.end());
    }
    return findings;
}

Findings check_goes_on(const Net& net, const Folded& folded, const std::string& on_title, Size on, bool on_shrinks_too) {
    const bool fits = folded.size.width <= on.width + same_point && folded.size.height <= on.height + same_point;
    if (fits) return {};
    return {goes_on_finding(net, folded.size, on_title, on, on_shrinks_too)};
}

std::optional<double> smallest_scale(Length room_at_full_size, Length thing, Length clearance) {
    if (room_at_full_size <= Length()) return std::nullopt;
    const double scale = (thing + clearance) / room_at_full_size;
    if (scale > most_per_cent / 100.0) return std::nullopt;
    return std::max(scale, least_per_cent / 100.0);
}

}  // namespace qw::parts
