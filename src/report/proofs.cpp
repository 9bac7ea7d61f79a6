// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/proofs.h"

#include "base/unit_system.h"
#include "report/html.h"

namespace qw::report {

namespace {

using checks::SignedSheet;

/// As JSON names it, and as people read it.
struct StateWords {
    const char *name, *told;
};
StateWords words_of(SignedSheet::State state) {
    switch (state) {
        case SignedSheet::State::same_file: return {"same-file", "holds: the file is the same"};
        case SignedSheet::State::same_pages: return {"same-pages", "holds: the file has changed, this sheet has not"};
        case SignedSheet::State::changed: return {"changed", "no longer holds: print it again"};
        case SignedSheet::State::gone: return {"gone", "no longer holds: the kit has no such sheet"};
    }
    return {"", ""};
}

std::string moved(Length by, const char* ahead, const char* back, UnitSystem ruler) {
    return show(max(by, -by), ruler) + (by < Length() ? back : ahead);
}

std::string readings_of(const SignedSheet& sheet) {
    std::string text;
    if (sheet.gauge) text += "gauge " + show(*sheet.gauge, sheet.ruler);
    if (sheet.right && sheet.up)
        text += (text.empty() ? "" : "; ") +
                ("back " + moved(*sheet.right, " to the right", " to the left", sheet.ruler) + ", " + moved(*sheet.up, " up", " down", sheet.ruler));
    return text;
}

}  // namespace

nlohmann::ordered_json proofs_json(const std::vector<SignedSheet>& proofs) {
    nlohmann::ordered_json all = nlohmann::ordered_json::array();
    for (const SignedSheet& sheet : proofs) {
        nlohmann::ordered_json json;
        json["file"] = sheet.file;
        json["pages"] = sheet.pages;
        json["state"] = words_of(sheet.state).name;
        json["holds"] = sheet.holds();
        json["verdict"] = sheet.good ? "good" : "bad";
        json["version"] = sheet.version;
        json["printed_by"] = sheet.printed_by;
        json["printer"] = sheet.printer;
        json["stock"] = sheet.stock;
        json["setting"] = sheet.setting;
        json["date"] = sheet.date;
        if (sheet.gauge) json["gauge_mm"] = sheet.gauge->in_mm();
        if (sheet.right) json["offset_mm"] = {sheet.right->in_mm(), sheet.up->in_mm()};
        all.push_back(std::move(json));
    }
    return all;
}

nlohmann::ordered_json proofing_json(const ProofingSet& set) {
    nlohmann::ordered_json json;
    json["risks"] = set.risks;
    json["sheets"] = nlohmann::ordered_json::array();
    for (const ProofingSheet& sheet : set.sheets) json["sheets"].push_back({{"file", sheet.file}, {"pages", sheet.pages}, {"shows", sheet.shows}});
    return json;
}

std::string proofs_text(const AuditReport& report) {
    std::string text;
    for (const SignedSheet& sheet : report.proofs) {
        text += "  " + sheet.file + ", " + sheet.pages_told() + ": " + words_of(sheet.state).told + "; " + (sheet.good ? "good" : "bad") + ", " +
                sheet.printed_by + ", " + sheet.date;
        const std::string readings = readings_of(sheet);
        text += (readings.empty() ? "" : ", " + readings) + "\n";
    }
    return text.empty() ? "" : "\nsigned proofs\n" + text;
}

std::string proofs_section(const AuditReport& report) {
    if (report.proofs.empty()) return "";
    std::string rows;
    for (const SignedSheet& sheet : report.proofs)
        rows += "<tr><th scope=\"row\">" + escaped(sheet.file) + ", " + sheet.pages_told() + "</th><td>" + words_of(sheet.state).told + "</td><td>" +
                (sheet.good ? "good" : "bad") + "</td><td>" + escaped(sheet.printed_by) + ", " + sheet.date + "</td><td>" + escaped(sheet.printer) +
                "; " + escaped(sheet.stock) + "; " + escaped(sheet.setting) + "</td><td>" + escaped(readings_of(sheet)) + "</td></tr>\n";
    return "<section aria-labelledby=\"proofs\">\n<h2 id=\"proofs\">Signed proofs</h2>\n<div class=\"wide\" role=\"region\" "
           "aria-labelledby=\"proofs-caption\" tabindex=\"0\">\n<table>\n"
           "<caption id=\"proofs-caption\">Sheets that were printed and signed, and whether they still are those of the "
           "kit</caption>\n<thead><tr><th scope=\"col\">Sheet</th><th scope=\"col\">Signature</th><th scope=\"col\">Verdict</th>"
           "<th scope=\"col\">By, on</th><th scope=\"col\">Printer, paper, setting</th><th scope=\"col\">Readings</th></tr></thead>\n<tbody>\n" +
           rows + "</tbody>\n</table>\n</div>\n</section>\n";
}

}  // namespace qw::report
