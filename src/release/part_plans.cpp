// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/part_plans.h"

#include "journal/measures.h"
#include "kit/stock_of.h"
#include "parts/holes.h"

#include <algorithm>
#include <cstdio>

namespace qw::release {

namespace {

std::string per_cent(double percent) {
    char text[32];
    std::snprintf(text, sizeof text, "%g %%", percent);
    return text;
}

/// As people put it in: its narrower side across the mouth.
parts::Contents as_put_in(const kit::Thing& thing) { return {thing.title, thing.size.as_portrait(), false, 1}; }

}  // namespace

SizedParts::SizedParts(const ReadKit& kit, const SheetCounts& counts, const Paper& paper, Print print, double percent)
    : kit_(kit), counts_(counts), paper_(paper), print_(print), percent_(percent) {
    for (const kit::Set& set : kit.manifest.sets)
        if (set.role == kit::Role::part) size(set);
    std::sort(all_.begin(), all_.end(), [](const SizedPart& a, const SizedPart& b) { return a.set < b.set; });
}

const SizedPart* SizedParts::of(const std::string& set) const {
    const auto found = std::find_if(all_.begin(), all_.end(), [&](const SizedPart& part) { return part.set->name == set; });
    return found == all_.end() ? nullptr : &*found;
}

void SizedParts::size(const kit::Set& set) {
    if (of(set.name)) return;
    // What goes in it is sized first; the manifest's reader has refused circles.
    for (const kit::Set& other : kit_.manifest.sets)
        if (*other.goes_in == set.name) size(other);
    SizedPart part;
    part.set = &set;
    part.part = &kit_.pipeline->parts.at(*set.part);
    part.edition = edition_of(*kit_.printer, paper_, print_, set.sides);
    part.scale = scale_of(set, part.edition, true, percent_);
    if (const auto counted = counts_.parts.find(set.name); counted != counts_.parts.end()) part.count = counted->second;
    parts::NetConditions conditions{paper_.ruler, part.scale, kit::stock_of(kit_.manifest, *kit_.pipeline, *set.stock).caliper, {}, {}};
    for (const PutIn& one : contents_of(set)) {
        conditions.contents.width = max(conditions.contents.width, one.contents.size.width);
        conditions.contents.height = max(conditions.contents.height, one.contents.size.height);
    }
    conditions.contents_thickness = contents_thickness(set);
    part.net = parts::net_of(*part.part, conditions);
    part.folded = parts::fold(part.net);
    all_.push_back(std::move(part));
}

std::vector<SizedParts::PutIn> SizedParts::contents_of(const kit::Set& set) const {
    std::vector<PutIn> all;
    for (const auto& name : set.holds) all.push_back({"", as_put_in(*kit_.pipeline->thing(*name))});
    for (const kit::Set& other : kit_.manifest.sets) {
        if (*other.goes_in != set.name) continue;
        const SizedPart& inner = *of(other.name);
        all.push_back({other.pocket, {inner.part->title + " of set '" + other.name + "'", inner.folded.size, true, inner.scale}});
    }
    return all;
}

Length SizedParts::contents_thickness(const kit::Set& set) const {
    Length total;
    for (const auto& name : set.holds) total += kit_.pipeline->thing(*name)->thickness;
    for (const kit::Set& other : kit_.manifest.sets)
        if (*other.goes_in == set.name) total += filled(*of(other.name));
    return total;
}

Length SizedParts::filled(const SizedPart& part) const { return part.folded.thickness + contents_thickness(*part.set); }

void SizedParts::check_contents(const SizedPart& part, Findings& findings) const {
    const kit::PartRules& rules = kit_.pipeline->part_rules;
    for (const PutIn& one : contents_of(*part.set))
        for (const parts::Pocket& pocket : part.net.pockets) {
            if (!one.pocket.empty() && one.pocket != pocket.name) continue;
            const Findings found = parts::check_goes_in(part.net, part.folded, pocket, one.contents, rules);
            findings.insert(findings.end(), found.begin(), found.end());
        }
}

/// A page of the journal as printed and trimmed, or a piece as it is cut.
void SizedParts::check_carrier(const SizedPart& part, const journal::Measures& measures, Findings& findings) const {
    const std::string& on = *part.set->goes_on;
    if (on.empty()) return;
    std::string title = "A page";
    Size size = measures.conditions.page;
    if (on != "page") {
        const journal::Piece* piece = measures.piece(on);
        if (!piece) return;  // the kit left it out
        title = piece->of->title;
        size = {piece->width.rounded, piece->height.rounded};
    }
    const Findings found = parts::check_goes_on(part.net, part.folded, title, size, !part.set->print_at);
    findings.insert(findings.end(), found.begin(), found.end());
}

Findings SizedParts::findings(const journal::Measures& measures) const {
    Findings all;
    for (const SizedPart& part : all_) {
        Findings found = part.folded.findings;
        check_contents(part, found);
        check_carrier(part, measures, found);
        const Findings holes = parts::holes_out_of_reach(part.net, *kit_.pipeline);
        found.insert(found.end(), holes.begin(), holes.end());
        for (Finding& finding : found) {
            if (finding.file.empty()) finding.file = part.part->file;
            finding.message += " (set '" + part.set->name + "', " + paper_.title + ", " + name_of(print_) + ", " + per_cent(percent_) + ")";
            all.push_back(std::move(finding));
        }
    }
    return all;
}

}  // namespace qw::release
