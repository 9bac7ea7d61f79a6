// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/grouped.h"

#include <algorithm>

namespace qw::report {

namespace {

bool same_but_for_place(const Finding& a, const Finding& b) {
    return a.rule == b.rule && a.level == b.level && a.measured == b.measured && a.limit == b.limit && a.message == b.message && a.mend == b.mend;
}

}  // namespace

std::string place_of(const Finding& f) {
    std::string place = f.file;
    if (f.page) place += (place.empty() ? "page " : ", page ") + std::to_string(f.page);
    if (f.line) place += (place.empty() ? "line " : ", line ") + std::to_string(f.line);
    return place;
}

std::vector<FindingGroup> grouped(const Findings& findings) {
    std::vector<FindingGroup> groups;
    for (const Level level : {Level::error, Level::warning, Level::note}) {
        for (const Finding& finding : findings) {
            if (finding.level != level) continue;
            auto group = std::find_if(groups.begin(), groups.end(), [&](const FindingGroup& g) { return same_but_for_place(g.finding, finding); });
            if (group == groups.end()) group = groups.insert(groups.end(), FindingGroup{finding, {}});
            if (const std::string place = place_of(finding); !place.empty()) group->places.push_back(place);
        }
    }
    return groups;
}

std::size_t count(const Findings& findings, Level level) {
    return static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.level == level; }));
}

std::string counted(std::size_t n, const std::string& one) { return (n == 0 ? "no" : std::to_string(n)) + " " + one + (n == 1 ? "" : "s"); }

}  // namespace qw::report
