// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/audit_report.h"

#include "report/grouped.h"
#include "report/html.h"
#include "report/page_sections.h"
#include "report/proofs.h"

namespace qw::report {

namespace {

std::string with_capital(std::string sentence) {
    if (sentence[0] >= 'a' && sentence[0] <= 'z') sentence[0] = static_cast<char>(sentence[0] - 32);
    return sentence;
}

/// What another way of counting warnings would change.
std::string if_warnings_count(const AuditReport& r, std::size_t errors, std::size_t warnings) {
    if (r.strict) return warnings ? "Warnings count as errors in this audit." : "Warnings would count as errors in this audit; there is none.";
    if (warnings == 0) return "If warnings counted as errors, nothing would change.";
    if (errors) return "If warnings counted as errors, they would have to be mended too.";
    return "If warnings counted as errors (<code>--strict</code>), it would not be fit for sale.";
}

std::string verdict(const AuditReport& r) {
    const std::size_t errors = count(r.findings, Level::error), warnings = count(r.findings, Level::warning), notes = count(r.findings, Level::note);
    std::string sentence = counted(errors, "error") + ", " + counted(warnings, "warning") + " and " + counted(notes, "note");
    if (!r.sheets.empty()) sentence += " on " + counted(r.sheets.size(), "page");
    return "<section class=\"verdict\" aria-labelledby=\"verdict\">\n<h2 id=\"verdict\">" +
           std::string(r.fit_for_sale() ? "Fit for sale" : "Not fit for sale") + "</h2>\n<p>" + with_capital(sentence) + ".</p>\n<p>" +
           if_warnings_count(r, errors, warnings) + "</p>\n</section>\n";
}

std::string ways(const AuditReport& r) {
    std::string html = "<nav aria-label=\"Parts of this report\">\n<ul class=\"parts\">\n<li><a href=\"#todo\">What to do</a></li>\n";
    if (!r.proofs.empty()) html += "<li><a href=\"#proofs\">Signed proofs</a></li>\n";
    if (!r.sheets.empty()) html += "<li><a href=\"#seen\">All pages, small</a></li>\n<li><a href=\"#sheets\">All sheets, in figures</a></li>\n";
    if (!r.tried.empty() || !r.untried.empty()) html += "<li><a href=\"#checked\">What was checked</a></li>\n";
    return html + "</ul>\n</nav>\n";
}

}  // namespace

std::string to_html(const AuditReport& r) {
    const std::string name = r.title.empty() ? r.subject : r.title;
    const std::vector<ToldSection> sections = told_by_sheet(r);
    const std::vector<std::vector<std::size_t>> told = told_of_sheets(r, sections);
    Pictures pictures;
    std::string html =
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, "
        "initial-scale=1\">\n<title>" +
        escaped(name) + ": audit before sale</title>\n<style>" + page_style +
        "</style>\n</head>\n<body>\n<a class=\"skip\" href=\"#main\">To the report</a>\n<header>\n<h1>" + escaped(name) +
        "</h1>\n<p class=\"subject\">Audit before sale of " + escaped(r.subject) + "</p>\n</header>\n<main id=\"main\" tabindex=\"-1\">\n";
    html += verdict(r) + ways(r) + findings_section(r, sections, pictures) + proofs_section(r) + contact_sheets(r, told, pictures) +
            sheet_table(r, told) + checked_section(r);
    return html +
           "</main>\n<footer>\n<p class=\"small\"><code>quirewright rule NAME</code> tells why a rule is there, and where its limit comes "
           "from.</p>\n</footer>\n" +
           pictures.symbols() + "</body>\n</html>\n";
}

}  // namespace qw::report
