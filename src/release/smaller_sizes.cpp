// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/smaller_sizes.h"

#include "base/words.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::release {

namespace {

bool fails(const compose::SizeColumn& column, const std::string& rule) {
    return std::any_of(column.measures.findings.begin(), column.measures.findings.end(), [&](const Finding& finding) { return finding.rule == rule; });
}

std::string run_text(double from, double to) {
    char text[40];
    if (from == to) std::snprintf(text, sizeof text, "%.0f %%", from);
    else std::snprintf(text, sizeof text, "%.0f to %.0f %%", from, to);
    return text;
}

}  // namespace

SizesThatFail::SizesThatFail(const checks::Rules& rules) : rules_(rules), smallest_(rules.limit("journal-sizes")) {}

bool SizesThatFail::asked(const compose::SizeColumn& column) const {
    return (column.percent < 100 && column.percent >= smallest_) || (column.percent > 100 && column.print == Print::borderless);
}

/// Neighbouring sizes as one run: "103 to 101 %, 55 to 50 %".
std::string SizesThatFail::sizes_that_fail(const std::vector<compose::SizeColumn>& columns, const std::string& rule) const {
    std::vector<std::string> runs;
    const compose::SizeColumn* first = nullptr;
    const compose::SizeColumn* last = nullptr;
    const auto close = [&] {
        if (first) runs.push_back(run_text(first->percent, last->percent));
        first = nullptr;
    };
    for (const compose::SizeColumn& column : columns) {
        if (!asked(column) || !fails(column, rule)) {
            close();
            continue;
        }
        if (!first) first = &column;
        last = &column;
    }
    close();
    return listed(runs);
}

void SizesThatFail::add(const std::vector<compose::SizeColumn>& columns) {
    rules_.tried("journal-sizes", columns.size());
    const compose::SizeColumn& full = full_size(columns);
    std::vector<std::string> seen;
    for (const compose::SizeColumn& column : columns) {
        if (!asked(column)) continue;
        for (const Finding& finding : column.measures.findings) {
            if (fails(full, finding.rule)) continue;
            Failed& failed = by_check_[finding.rule];
            const double distance = std::abs(column.percent - 100);
            if (failed.first.rule.empty() || distance < failed.from_full) {
                failed.first = finding;
                failed.first.file = column.measures.journal->file;
                failed.from_full = distance;
            }
            if (std::find(seen.begin(), seen.end(), finding.rule) == seen.end()) seen.push_back(finding.rule);
        }
    }
    for (const std::string& rule : seen)
        by_check_[rule].where.push_back(full.measures.conditions.paper.title + ", " + name_of(full.print) + ": " + sizes_that_fail(columns, rule));
}

void SizesThatFail::tell(Findings& findings) const {
    for (const auto& [check, failed] : by_check_) {
        Finding finding = failed.first;
        finding.rule = "journal-sizes";
        std::string where;
        for (const std::string& one : failed.where) where += (where.empty() ? "" : "; ") + one;
        finding.message += " (The check '" + check + "' holds at full size, but not at " + where + ".)";
        rules_.say(findings, std::move(finding));
    }
}

}  // namespace qw::release
