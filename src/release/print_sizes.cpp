// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/print_sizes.h"

#include <algorithm>
#include <cstdio>

namespace qw::release {

namespace {

std::string percent_text(double percent) {
    char text[16];
    std::snprintf(text, sizeof text, "%.0f %%", percent);
    return text;
}

/// Nothing when the kit does not set the check otherwise; "off" when it does not want it.
std::optional<std::string> level_set_by(const kit::Manifest& manifest, const std::string& rule) {
    for (const kit::Override& other : manifest.overrides)
        if (other.rule == rule) return other.level;
    return std::nullopt;
}

}  // namespace

const std::vector<double>& shown_percents() {
    static const std::vector<double> percents = [] {
        std::vector<double> all;
        for (int percent = 103; percent >= 90; --percent) all.push_back(percent);
        for (int percent = 85; percent >= 30; percent -= 5) all.push_back(percent);
        return all;
    }();
    return percents;
}

std::vector<compose::SizeColumn> sizes_of(const ReadKit& kit, const SheetCounts& counts, const Paper& paper, Print print) {
    journal::Calculation calculation(*kit.journal);
    std::vector<compose::SizeColumn> columns;
    for (const double percent : shown_percents()) {
        columns.push_back({percent_text(percent), percent, print,
                           calculation.at(conditions_of(kit.manifest, *kit.pipeline, *kit.printer, counts, paper, print, percent))});
        set_levels(kit.manifest, columns.back().measures.findings);
    }
    return columns;
}

const compose::SizeColumn& full_size(const std::vector<compose::SizeColumn>& columns) {
    return *std::find_if(columns.begin(), columns.end(), [](const compose::SizeColumn& column) { return column.percent == 100; });
}

void set_levels(const kit::Manifest& manifest, Findings& findings) {
    Findings kept;
    for (Finding& finding : findings) {
        const auto set = level_set_by(manifest, finding.rule);
        if (set == "off") continue;
        for (const Level level : {Level::note, Level::warning, Level::error})
            if (set == name_of(level)) finding.level = level;
        kept.push_back(std::move(finding));
    }
    findings = std::move(kept);
}

Findings journal_findings(const compose::SizeColumn& column) {
    Findings findings = column.measures.findings;
    for (Finding& finding : findings) {
        finding.file = column.measures.journal->file;
        finding.message += " (" + column.measures.conditions.paper.title + ", " + name_of(column.print) + ", " + column.label + ")";
    }
    return findings;
}

}  // namespace qw::release
