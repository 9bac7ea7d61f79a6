// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/audit_report.h"

#include "report/finding_json.h"

#include <algorithm>

namespace qw::report {

namespace {

std::string place_of(const Finding& f) {
    std::string place = f.file;
    if (f.page) place += (place.empty() ? "page " : ", page ") + std::to_string(f.page);
    if (f.line) place += (place.empty() ? "line " : ", line ") + std::to_string(f.line);
    return place;
}

std::string counted(std::size_t n, const std::string& one) { return std::to_string(n) + " " + one + (n == 1 ? "" : "s"); }

std::size_t count(const Findings& findings, Level level) {
    return static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.level == level; }));
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
    return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

std::string to_text(const AuditReport& report) {
    std::string text = report.subject + (report.fit_for_sale() ? ": fit for sale" : ": not fit for sale");
    text += " (" + counted(count(report.findings, Level::error), "error") + ", " + counted(count(report.findings, Level::warning), "warning") +
            ", " + counted(count(report.findings, Level::note), "note") + ")\n";
    for (const Finding& f : report.findings) {
        text += "\n" + name_of(f.level) + "  " + place_of(f) + "\n  " + f.message;
        if (!f.measured.empty()) text += "\n  measured " + f.measured + (f.limit.empty() ? "" : ", limit " + f.limit);
        if (!f.mend.empty()) text += "\n  " + f.mend;
        text += "\n  rule " + f.rule + "\n";
    }
    return text;
}

}  // namespace qw::report
