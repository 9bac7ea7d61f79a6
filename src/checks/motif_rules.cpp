// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/motif_rules.h"

#include "checks/motif_edges.h"
#include "checks/said_of_picture.h"

#include <algorithm>
#include <cmath>

namespace qw::checks {

namespace {

Rect at_point(Point at) { return {at.x, at.y, at.x, at.y}; }

MotifEdges edges_of(const MotifSeen& seen, double least, const std::function<bool(Point)>& asked) {
    return motif_edges(*seen.ink, seen.width, seen.height, seen.placement->artwork, least, asked);
}

double share_of(std::size_t some, std::size_t all) { return 100.0 * static_cast<double>(some) / static_cast<double>(all); }

void check_loss(const Rules& rules, const MotifSeen& seen, const std::string& where, Findings& findings) {
    const char* rule = "artwork-motif-lost";
    rules.tried(rule);
    const compose::Placement& p = *seen.placement;
    const MotifEdges edges = edges_of(seen, rules.with(rule, "edge"), [&](Point at) { return !p.visible.holds(at_point(at)); });
    if (static_cast<double>(edges.all) < rules.with(rule, "least-edges")) return;
    const double share = share_of(edges.inside, edges.all);
    if (share <= rules.limit(rule)) return;
    const Length widest = max(max(p.lost.left, p.lost.right), max(p.lost.top, p.lost.bottom));
    rules.say(findings, of_picture(rule, seen.shown, 0,
                                   in_digits(share, "%.1f") + " % of its edges, in a band of up to " + in_digits(widest.in_mm(), "%.1f") + " mm",
                                   in_digits(rules.limit(rule), "%g") + " %", "Part of the motif is cut away" + where,
                                   "Move what matters inward, or draw it nearer to the paper's shape"));
}

void check_fold(const Rules& rules, const MotifSeen& seen, const std::string& where, Findings& findings) {
    const char* rule = "artwork-motif-in-fold";
    const compose::Placement& p = *seen.placement;
    if (!p.sheet.landscape()) return;
    rules.tried(rule);
    const Length half = Length::mm(rules.with(rule, "either-side")), fold = p.sheet.width / 2;
    const MotifEdges edges = edges_of(seen, rules.with(rule, "edge"),
                                      [&](Point at) { return p.visible.holds(at_point(at)) && at.x > fold - half && at.x < fold + half; });
    if (edges.asked == 0) return;
    const double share = share_of(edges.inside, edges.asked);
    if (share <= rules.limit(rule)) return;
    rules.say(findings, of_picture(rule, seen.shown, 0, in_digits(share) + " % of the fold", in_digits(rules.limit(rule), "%g") + " %",
                                   "A motif stands in the fold, where it is pierced and disappears in the binding" + where, "Move it to one side of the fold"));
}

void check_pixels(const Rules& rules, const kit::Set& set, const MotifSeen& seen, Findings& findings) {
    const compose::Placement& p = *seen.placement;
    rules.tried("artwork-stretched");
    if (std::abs(p.ppi_x / p.ppi_y - 1) * 100 > rules.limit("artwork-stretched"))
        rules.say(findings, of_picture("artwork-stretched", seen.shown, 0, in_digits(p.ppi_x) + " x " + in_digits(p.ppi_y) + " ppi",
                                       in_digits(rules.limit("artwork-stretched"), "%g") + " % apart", "It is stretched: its pixels have not the shape of drawn-at",
                                       "Mend drawn-at of set " + set.name + ", or export the file at its shape"));
    rules.tried("artwork-ppi-high");
    const double ppi = std::min(p.ppi_x, p.ppi_y);
    if (ppi > rules.limit("artwork-ppi-high"))
        rules.say(findings, of_picture("artwork-ppi-high", seen.shown, 0, in_digits(ppi) + " ppi", in_digits(rules.limit("artwork-ppi-high")) + " ppi",
                                       "It has more pixels than a printer shows, and makes the bundle heavy", "Export it at 300 ppi of its drawn size"));
}

}  // namespace

void check_motif(const Rules& rules, const kit::Set& set, const Edition& edition, const MotifSeen& seen, Findings& findings) {
    if (!seen.placement->face || seen.placement->artwork.empty()) return;
    const std::string where = " on " + edition.paper.title;
    if (seen.placement->ppi_x > 0) check_pixels(rules, set, seen, findings);
    // The bordered edition shows the same of the picture, smaller.
    if (edition.print == Print::bordered) return;
    if (set.place != kit::Place::contain) check_loss(rules, seen, where, findings);
    if (set.role == kit::Role::journal_page) check_fold(rules, seen, where, findings);
}

void check_holes(const Rules& rules, const std::vector<Point>& holes, const std::string& what, const std::string& where, const MotifSeen& seen, Findings& findings) {
    const char* rule = "artwork-motif-at-hole";
    const compose::Placement& p = *seen.placement;
    if (!p.face || p.artwork.empty() || holes.empty()) return;
    const double reach = rules.with(rule, "keep-out");
    double most = 0;
    std::size_t at_hole = 0;
    for (std::size_t i = 0; i < holes.size(); ++i) {
        rules.tried(rule);
        const MotifEdges edges = edges_of(seen, rules.with(rule, "edge"), [&](Point at) {
            return p.visible.holds(at_point(at)) && std::hypot((at.x - holes[i].x).in_mm(), (at.y - holes[i].y).in_mm()) <= reach;
        });
        if (edges.asked == 0 || share_of(edges.inside, edges.asked) <= most) continue;
        most = share_of(edges.inside, edges.asked);
        at_hole = i + 1;
    }
    if (most <= rules.limit(rule)) return;
    rules.say(findings, of_picture(rule, seen.shown, 0,
                                   in_digits(most) + " % of the place about hole " + std::to_string(at_hole) + " of " + std::to_string(holes.size()),
                                   in_digits(rules.limit(rule), "%g") + " %", "A motif stands where the " + what + " go through it" + where,
                                   "Move it " + in_digits(reach, "%g") + " mm and more away from the hole"));
}

}  // namespace qw::checks
