// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/audit_report.h"

#include "report/finding_json.h"
#include "report/grouped.h"
#include "report/proofs.h"

#include <algorithm>

namespace qw::report {

namespace {

constexpr std::size_t most_places = 4;

std::string places_line(const FindingGroup& group) {
    std::string line;
    for (std::size_t i = 0; i < std::min(group.places.size(), most_places); ++i) line += (i ? "; " : "") + group.places[i];
    if (group.places.size() > most_places) line += "; and " + std::to_string(group.places.size() - most_places) + " more";
    return line;
}

}  // namespace

bool AuditReport::fit_for_sale() const {
    return std::none_of(findings.begin(), findings.end(), [&](const Finding& f) {
        return f.level == Level::error || (strict && f.level == Level::warning);
    });
}

std::string to_json(const AuditReport& report) {
    nlohmann::ordered_json json;
    json["subject"] = report.subject;
    json["fit_for_sale"] = report.fit_for_sale();
    json["findings"] = nlohmann::ordered_json::array();
    for (const Finding& f : report.findings) json["findings"].push_back(finding_json(f));
    if (!report.proofs.empty()) json["proofs"] = proofs_json(report.proofs);
    if (report.proofing) json["proofing"] = proofing_json(*report.proofing);
    return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

std::string to_text(const AuditReport& report) {
    std::string text = report.subject + (report.fit_for_sale() ? ": fit for sale" : ": not fit for sale");
    text += " (" + counted(count(report.findings, Level::error), "error") + ", " + counted(count(report.findings, Level::warning), "warning") +
            ", " + counted(count(report.findings, Level::note), "note") + ")\n";
    if (report.proofing)
        text += "\nproofing set: " + counted(report.proofing->sheets.size(), "sheet") + " to print, for " +
                counted(report.proofing->risks.size(), "risk") + " on paper\n";
    for (const FindingGroup& group : grouped(report.findings)) {
        const Finding& f = group.finding;
        text += "\n" + name_of(f.level) + "  " + places_line(group) + "\n  " + f.message;
        if (!f.measured.empty()) text += "\n  measured " + f.measured + (f.limit.empty() ? "" : ", limit " + f.limit);
        if (!f.mend.empty()) text += "\n  " + f.mend;
        text += "\n  rule " + f.rule + "\n";
    }
    return text + proofs_text(report);
}

}  // namespace qw::report
